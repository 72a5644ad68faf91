/** Wires on paper: width by cross-section, text (style sheet, section 2). */
import type { WireSpec } from '../../machine/index.ts';

/** How much wider than the wire its casing is, units. */
export const CASING = 2.6;

export function wireWidth(mm2: number): number {
  if (mm2 >= 25) return 9;
  if (mm2 >= 10) return 7.5;
  if (mm2 >= 4) return 6;
  return mm2 > 1 ? 5 : 4;
}

export const wireText = (wire: WireSpec): string => `${wire.colour} ${wire.number} ${wire.mm2}`;
