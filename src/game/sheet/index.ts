/** The door of the sheets: schematics laid out from the book. */
export type { PlacedLabel } from './labels.ts';
export { overlap } from './labels.ts';
export { type LaidSheet, laySheet, layoutSheet } from './layout.ts';
export { drawnEdges } from './plan.ts';
export { sheetToSvg } from './view.ts';
