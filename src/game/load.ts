/** Brings drawings and the label face as files, each once. */
import type { Drawing } from './drawing.ts';
import type { Lettering } from './lettering.ts';

const FILES = import.meta.glob<string>('../../assets/drawings/built/*.json', {
  query: '?url',
  import: 'default',
  eager: true,
});
const fetched = new Map<string, Promise<unknown>>();

function bring(name: string): Promise<unknown> {
  let file = fetched.get(name);
  if (!file) {
    const url = Object.entries(FILES).find(([path]) => path.endsWith(`/${name}.json`))?.[1];
    if (!url) return Promise.reject(new Error(`no drawing "${name}"`));
    file = fetch(url).then((response) => {
      if (!response.ok) throw new Error(`${name}: ${response.status}`);
      return response.json() as Promise<unknown>;
    });
    file.catch(() => fetched.delete(name));
    fetched.set(name, file);
  }
  return file;
}

/** A place by its name: a zone, or the yard seen from either side. */
export const loadDrawing = (id: string): Promise<Drawing> => bring(FILE_OF[id] ?? id) as Promise<Drawing>;
export const loadLettering = (): Promise<Lettering> => bring('lettering') as Promise<Lettering>;

const FILE_OF: Record<string, string> = { YARD: 'yard', 'YARD-RIGHT': 'yard-right' };
