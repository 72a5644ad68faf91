/** The texts of the page. Keys are typed by the English file; no sentence stands in code. */
import i18next from 'i18next';
import enPages from '../../../assets/texts/en.json';
import enDebrief from '../../../assets/texts/en-debrief.json';

const en = { ...enPages, ...enDebrief };

declare module 'i18next' {
  interface CustomTypeOptions {
    resources: { translation: typeof en };
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

/** A text that a code of the book names; the code itself where there is none. */
export function wordFor(group: 'modes' | 'colours' | 'verbs' | 'kinds', code: string): string {
  const words: Record<string, string> = en[group];
  return words[code] ?? code.replaceAll('_', ' ');
}
