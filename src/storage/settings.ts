/** What a student sets for this browser. Kept if the browser allows it. */
export interface Settings {
  theme: 'system' | 'light' | 'dark';
  motion: 'system' | 'less';
  sound: boolean;
  /** Shown before sums. */
  currency: string;
  /** Single letters work as keys while no text is being typed. */
  letterKeys: boolean;
  /** The meter reads by itself once both leads are on. */
  autoRead: boolean;
  /** Where the student has put the instrument: shares of the room that it has, 0 to 1; below 0 it finds its place itself. */
  toolX: number;
  toolY: number;
}

export const DEFAULTS: Settings = {
  theme: 'system',
  motion: 'system',
  sound: true,
  currency: '$',
  letterKeys: true,
  autoRead: false,
  toolX: -1,
  toolY: -1,
};

const KEY = 'ohmyard.settings';

export function loadSettings(): Settings {
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(KEY) ?? '{}');
    return typeof kept === 'object' && kept !== null ? { ...DEFAULTS, ...onlyKnown(kept) } : DEFAULTS;
  } catch {
    return DEFAULTS;
  }
}

export function saveSettings(settings: Settings): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(settings));
  } catch {
    // Without storage the settings hold until the window is closed.
  }
}

/** Values of another type than the default's are dropped. */
function onlyKnown(kept: object): Partial<Settings> {
  return Object.fromEntries(
    Object.entries(kept).filter(
      ([key, value]) => key in DEFAULTS && typeof value === typeof DEFAULTS[key as keyof Settings],
    ),
  );
}
