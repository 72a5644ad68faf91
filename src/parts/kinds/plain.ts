/** Kinds whose elements and regions the book writes out: switches, controllers and everything with no logic of its own. */
import type { RegionSpec } from '../spec.ts';
import type { Kind, Plain } from './kind.ts';
import { plainFamilies } from './plain-faults.ts';

function regionsOf(part: Plain): RegionSpec[] {
  if (part.kind === 'switch') return [];
  if (part.kind === 'general') return part.regions ?? [];
  const codes = part.codes.map((code) => ({
    id: code.code,
    states: ['clear', 'stored'],
    initial: 'clear',
    transitions: [{ from: 'clear', to: 'stored', when: code.when, afterMs: code.afterMs }],
  }));
  return [...part.regions, ...codes];
}

export const plain: Kind<Plain> = {
  elements: (part) => part.elements,
  regions: regionsOf,
  faults: (part) => part.failures.flatMap((failure) => plainFamilies(part, failure)),
};
