/** What a change names of its machine, so that each can be looked up. */
import type { Change } from '../parts/index.ts';

export type NamedIn = 'element' | 'region' | 'quantity' | 'point' | 'wire';

export function namesIn(change: Change): [field: string, name: string, what: NamedIn][] {
  switch (change.kind) {
    case 'stuck':
      return [['region', change.region, 'region']];
    case 'quantity':
      return [['quantity', change.quantity, 'quantity']];
    case 'bridge':
      return [
        ['a', change.a, 'point'],
        ['b', change.b, 'point'],
      ];
    case 'chafe': {
      const isWire = change.to.startsWith('W:');
      return [['wire', change.wire, 'wire'], isWire ? ['to', change.to.slice(2), 'wire'] : ['to', change.to, 'point']];
    }
    default:
      return [['element', change.element, 'element']];
  }
}
