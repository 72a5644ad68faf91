/**
 * Widths of the label face, so that a sheet can be laid out without a screen: advance of the characters from space to
 * tilde, thousandths of the type size, from the OFL files of Barlow Condensed.
 */
const MEDIUM = [
  200, 261, 274, 599, 426, 776, 564, 137, 254, 254, 361, 440, 189, 320, 202, 363, 447, 266, 415, 418, 440, 420, 420,
  381, 429, 414, 234, 207, 440, 440, 440, 394, 759, 436, 456, 452, 469, 432, 410, 457, 475, 220, 435, 466, 407, 530,
  501, 462, 451, 450, 453, 426, 439, 477, 457, 646, 449, 442, 401, 318, 363, 318, 406, 392, 194, 425, 431, 413, 431,
  417, 285, 423, 432, 212, 206, 421, 191, 657, 432, 424, 435, 435, 304, 387, 275, 432, 399, 575, 398, 387, 365, 298,
  159, 298, 471,
];
const SEMIBOLD = [
  200, 269, 306, 606, 434, 772, 581, 152, 279, 279, 361, 439, 199, 325, 211, 386, 450, 274, 425, 426, 459, 428, 429,
  392, 434, 423, 252, 218, 439, 439, 439, 413, 759, 456, 462, 457, 472, 435, 415, 462, 477, 224, 443, 477, 415, 538,
  507, 467, 457, 455, 461, 434, 452, 478, 471, 665, 460, 456, 406, 330, 386, 330, 413, 405, 206, 434, 437, 422, 437,
  426, 291, 431, 439, 215, 211, 433, 199, 665, 439, 432, 441, 441, 313, 398, 282, 438, 415, 592, 417, 403, 368, 319,
  171, 319, 480,
];
/** Letter spacing of the labels, units. */
export const SPACING = 0.2;
/** A character outside the table (dash, minus, squared). */
const OTHER = 440;
/** The arrow of a cross-reference is drawn, not set: its width for the type size. */
export const ARROW = '▸';
export const ARROW_WIDTH = 0.52;

export function textWidth(text: string, size: number, bold = false): number {
  const table = bold ? SEMIBOLD : MEDIUM;
  let width = 0;
  for (const c of text) {
    if (c === ARROW) width += ARROW_WIDTH * size;
    else width += ((table[c.charCodeAt(0) - 32] ?? OTHER) / 1000) * size + SPACING;
  }
  return width;
}
