/** The door of the sheets: schematics laid out from the book. */
export { findOnSheet } from './find.ts';

export { overlap, type PlacedLabel } from './labels.ts';
export { type LaidSheet, layoutSheet, laySheet } from './layout.ts';
export { drawnEdges, type SheetBook } from './plan.ts';
export { sheetToSvg } from './view.ts';
export { ENGLISH, type SheetWords } from './words.ts';
