/** The words that a sheet has of its own; everything else it prints is the book's and the layout's. */
export interface SheetWords {
  /** What wires and circles mean. */
  legend: string;
  /** Cross-references on this sheet and to another; the arrow stands before each. */
  here: string;
  beyond: string;
  sheet: string;
}

export const ENGLISH: SheetWords = {
  legend: 'Wires: color, number, mm².  Circles: points that take a probe.',
  here: 'n   track n of this sheet',
  beyond: 's.n   sheet s, track n',
  sheet: 'Sheet',
};
