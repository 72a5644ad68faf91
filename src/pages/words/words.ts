/** The texts of the page. Keys are typed by the English file; no sentence stands in code. */
import i18next from 'i18next';
import en from '../../../assets/texts/en.json';
import type enDebrief from '../../../assets/texts/en-debrief.json';

declare module 'i18next' {
  interface CustomTypeOptions {
    resources: { translation: typeof en & typeof enDebrief };
    returnNull: false;
  }
}

export function startWords(): void {
  void i18next.init({
    lng: 'en',
    fallbackLng: 'en',
    initAsync: false,
    resources: { en: { translation: en } },
    // Preact escapes what it draws.
    interpolation: { escapeValue: false },
  });
}

export const t = i18next.t;

export const sentence = (text: string): string => text.slice(0, 1).toUpperCase() + text.slice(1);

/** Closed with a full stop, so that the next sentence can follow. */
export const stopped = (text: string): string => (/[.?!…]$/.test(text) ? text : `${text}.`);

/** All texts of a group, each with its code. */
export const textsOf = (group: 'signs' | 'modeNotes'): [code: string, text: string][] => Object.entries(en[group]);

/** A text that a code of the book names; the code itself where there is none. */
export function wordFor(group: 'modes' | 'modeNotes' | 'colours' | 'verbs' | 'kinds' | 'fmi', code: string): string {
  const words: Record<string, string> = en[group];
  return words[code] ?? code.replaceAll('_', ' ');
}
