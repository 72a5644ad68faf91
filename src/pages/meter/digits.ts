/** Which segments a display's text lights: four digits, points between them, a minus before. */
const SEGMENTS: Record<string, string> = {
  '0': 'abcdef',
  '1': 'bc',
  '2': 'abged',
  '3': 'abgcd',
  '4': 'fgbc',
  '5': 'afgcd',
  '6': 'afgedc',
  '7': 'abc',
  '8': 'abcdefg',
  '9': 'abfgcd',
  '-': 'g',
  O: 'abcdef',
  L: 'fed',
  ' ': '',
};

export const DIGITS = 4;

export interface Digits {
  minus: boolean;
  cells: string[];
  /** Points lit behind a cell, by its index. */
  points: number[];
}

export function digitsOf(text: string): Digits {
  const minus = /^[-−]\d/.test(text);
  const body = minus ? text.slice(1) : text;
  const cells: string[] = [];
  const points: number[] = [];
  for (const sign of body) {
    if (sign === '.') points.push(cells.length - 1);
    else cells.push(sign);
  }
  const blank = Math.max(0, DIGITS - cells.length);
  return {
    minus,
    cells: [...Array<string>(blank).fill(' '), ...cells].slice(-DIGITS),
    points: points.map((p) => p + blank),
  };
}

export const lit = (sign: string, segment: string): boolean => (SEGMENTS[sign] ?? '').includes(segment);
