/** Pieces of the meter's drawing. Style attributes become plain ones: the page allows no inline style. */
import raw from '../../../assets/drawings/meter.svg?raw';

const plain = raw.replace(/ style="([^"]*)"/g, (_, css: string) =>
  css
    .split(';')
    .filter((rule) => rule.includes(':') && !rule.startsWith('filter'))
    .map((rule) => ` ${rule.slice(0, rule.indexOf(':')).trim()}="${rule.slice(rule.indexOf(':') + 1).trim()}"`)
    .join(''),
);

const drawing = new DOMParser().parseFromString(plain, 'image/svg+xml');

/** Shapes of a group of the drawing, without ids. */
export function piece(id: string): string {
  const group = drawing.getElementById(id);
  return group === null ? '' : group.innerHTML.replace(/ (?:id|xmlns)="[^"]*"/g, '');
}

export interface Segment {
  name: string;
  d: string;
}

/** The seven segments of one of the four digits. */
export function segments(digit: number): Segment[] {
  const group = drawing.getElementById(`digit-${digit}`);
  return [...(group?.querySelectorAll('path') ?? [])].map((path) => ({
    name: path.getAttribute('data-seg') ?? '',
    d: path.getAttribute('d') ?? '',
  }));
}
