/** Which symbol stands for an element, and how much of a column it takes. */
import { type Edge, terminalOf } from './network.ts';

export type SymbolKind =
  | 'fuse'
  | 'coil'
  | 'winding'
  | 'contact'
  | 'battery'
  | 'motor'
  | 'lamp'
  | 'driver'
  | 'input'
  | 'line'
  | 'stud';

/** Least height, units, from point to point. */
export const SYMBOL_HEIGHT: Record<SymbolKind, number> = {
  fuse: 46,
  coil: 48,
  winding: 74,
  contact: 74,
  battery: 62,
  motor: 82,
  lamp: 108,
  driver: 108,
  input: 108,
  line: 34,
  stud: 26,
};
/** A contact in a device's frame, beside terminal numbers and the device's name. */
export const FRAMED_HEIGHT = 100;
export const INLINE_HEIGHT = 26;
export const PLUG_HEIGHT = 29;

export function symbolOf(edge: Edge & { kind: 'element' }): SymbolKind {
  const { part, element } = edge;
  const owner = (point: string) => point.slice(0, point.indexOf('.'));
  if (owner(edge.a) !== owner(edge.b)) return 'line';
  switch (part.kind) {
    case 'fuse':
      return 'fuse';
    case 'relay':
      return element.id === 'coil' ? 'coil' : 'contact';
    case 'starter':
      return element.law.kind === 'motor' ? 'motor' : element.law.kind === 'contact' ? 'contact' : 'winding';
    case 'switch':
      return 'contact';
    default:
      return deviceSymbol(edge);
  }
}

function deviceSymbol({ part, element, a, b }: Edge & { kind: 'element' }): SymbolKind {
  if (element.law.kind === 'battery') return 'battery';
  if (terminalOf(a) === 'L' && terminalOf(b) === 'M') return 'stud';
  if (element.law.kind === 'motor') return 'motor';
  if (element.law.kind === 'resistance' && element.law.coldOhms !== undefined) return 'lamp';
  // What never quite opens is the controller's own consumption, not an output.
  const switches = element.law.kind === 'contact' && element.law.openOhms === undefined;
  if (part.kind === 'controller' && switches) return 'driver';
  return 'input';
}
