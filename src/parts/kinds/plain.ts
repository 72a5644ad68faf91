/** Kinds whose elements and regions the book writes out: switches, controllers and everything with no logic of its own. */
import { type Change, type FaultFamily, severityGrid } from '../change.ts';
import type { ElementSpec, RegionSpec } from '../spec.ts';
import { elementId, type Kind, type PartOf } from './kind.ts';

type Plain = PartOf<'switch'> | PartOf<'general'> | PartOf<'controller'>;

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
  faults: (part) => part.failures.flatMap(({ mode, weight }) => families(part, mode, weight)),
};

/** Elements through which this part's main current flows: contacts of a switch, the coil or filament of a load. */
function carriers(part: Plain): ElementSpec[] {
  const contacts = part.elements.filter((e) => e.law.kind === 'contact' && e.law.openOhms === undefined);
  if (part.kind !== 'general') return contacts;
  return part.elements.filter((e) =>
    ['resistance', 'contact', 'variable', 'battery', 'alternator'].includes(e.law.kind),
  );
}

function families(part: Plain, mode: string, weight: number): FaultFamily[] {
  const targets = carriers(part);
  const cures = curesOf(part, mode);
  const each = (make: (element: ElementSpec, ohms: number) => Change[], severities: number[] = []): FaultFamily[] =>
    targets.map((element) => ({
      at: part.id,
      mode,
      weight: weight / targets.length,
      severities,
      fault: (ohms) => ({ at: part.id, mode, changes: make(element, ohms), cures }),
    }));
  const series = (element: ElementSpec, ohms: number | null): Change => ({
    kind: 'series',
    element: elementId(part.id, element.id),
    ohms,
  });
  switch (mode) {
    case 'open':
    case 'open_output':
    case 'stuck_off':
    case 'dead':
      return each((element) => [series(element, null)]);
    case 'high_r':
    case 'loose':
    case 'corroded':
      return each(
        (element, ohms) => [series(element, ohms)],
        severityGrid(part.kind === 'general' ? ratedAmps(part) : 10),
      );
    case 'stuck_on':
      return each((element) => [{ kind: 'closed', element: elementId(part.id, element.id) }]);
    case 'misadjusted':
      return misadjusted(part, weight, cures);
    case 'weak':
    case 'discharged':
      return battery(part, mode, weight);
    case 'shorted':
      return each((element) => [{ kind: 'ohms', element: elementId(part.id, element.id), ohms: 0.05 }]);
    default:
      return [];
  }
}

/** A switch whose plunger or cam no longer reaches: its working contacts stay open together, or one of them does. */
function misadjusted(part: Plain, weight: number, cures: string[]): FaultFamily[] {
  const contacts = carriers(part);
  const open = (which: ElementSpec[]): FaultFamily => ({
    at: part.id,
    mode: 'misadjusted',
    weight: weight / (contacts.length + 1),
    severities: [],
    fault: () => ({
      at: part.id,
      mode: 'misadjusted',
      changes: which.map((e) => ({ kind: 'series', element: elementId(part.id, e.id), ohms: null })),
      cures,
    }),
  });
  const single = contacts.map((contact) => open([contact]));
  return contacts.length > 1 ? [...single, open(contacts)] : single;
}

/** Internal resistance rises as a battery empties: ohms for each volt below full. Estimate. */
const FLAT_OHMS_PER_VOLT = 0.01;

/** Ohms of a battery at its end, and rest volts of a flat one: rising severity is rising ohms, or falling charge. */
function battery(part: Plain, mode: string, weight: number): FaultFamily[] {
  const cell = part.elements.find((e) => e.law.kind === 'battery');
  if (cell === undefined) return [];
  const element = elementId(part.id, cell.id);
  return [
    {
      at: part.id,
      mode,
      weight,
      // Ohms for a weak one (healthy 0.007); for a flat one, volts below full: BCI table, 12.65 full to 11.89 empty.
      severities: mode === 'weak' ? [0.015, 0.025, 0.04, 0.07, 0.15] : [0.3, 0.45, 0.6, 0.76, 1.5, 2.5],
      fault: (degree) =>
        mode === 'weak'
          ? { at: part.id, mode, changes: [{ kind: 'battery', element, ohms: degree }], cures: ['replace'] }
          : {
              at: part.id,
              mode,
              changes: [
                { kind: 'battery', element, openVolts: 12.65 - degree, ohms: 0.007 + FLAT_OHMS_PER_VOLT * degree },
              ],
              cures: ['charge', 'replace'],
            },
    },
  ];
}

function curesOf(part: Plain, mode: string): string[] {
  if (mode === 'misadjusted') return ['adjust', 'replace'];
  if (mode === 'loose') return ['tighten', 'clean', 'replace'];
  if (mode === 'corroded' || (part.kind === 'general' && part.symbol === 'ground')) return ['clean', 'replace'];
  return ['replace'];
}

/** Rated current of a load from its own resistance at 12 V, at least 1 A; studs and battery carry the starter's. */
function ratedAmps(part: PartOf<'general'>): number {
  const ohms = part.elements.flatMap((e) => (e.law.kind === 'resistance' ? [e.law.ohms] : []));
  const least = ohms.length === 0 ? 1 : Math.min(...ohms);
  return Math.min(300, Math.max(1, 12 / Math.max(least, 1e-6)));
}
