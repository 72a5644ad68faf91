import { type Change, severityGrid } from '../change.ts';
import { elementId, type Kind, type PartOf } from './kind.ts';

/** Plunger travel, ms (book, section 4). */
const PLUNGER_IN_MS = 40;
const PLUNGER_OUT_MS = 30;

/** Elements of a starter that the kind knows by name: windings `pull` and `hold`, `contact`, `motor`. */
export const starter: Kind<PartOf<'starter'>> = {
  // The armature is driven by the crankshaft only while the pinion is engaged: no back-EMF with the plunger out.
  elements: (part) =>
    part.elements.map((e) => (e.law.kind === 'motor' ? { ...e, when: { region: part.id, is: ['in'] } } : e)),
  regions: (part) => {
    const windings = [elementId(part.id, 'pull'), elementId(part.id, 'hold')];
    return [
      {
        id: part.id,
        states: ['out', 'in'],
        initial: 'out',
        transitions: [
          { from: 'out', to: 'in', when: { amps: windings, above: part.pullInAmps }, afterMs: PLUNGER_IN_MS },
          { from: 'in', to: 'out', when: { amps: windings, below: part.dropOutAmps }, afterMs: PLUNGER_OUT_MS },
        ],
      },
    ];
  },
  faults: (part) =>
    part.failures.flatMap(({ mode, weight }) => {
      const element = (name: string) => elementId(part.id, name);
      const modes: Record<string, { changes: (ohms: number) => Change[]; severities?: number[] }[]> = {
        open_hold: [{ changes: () => [{ kind: 'series', element: element('hold'), ohms: null }] }],
        open_pull: [{ changes: () => [{ kind: 'series', element: element('pull'), ohms: null }] }],
        high_r_contact: [
          { changes: (ohms) => [{ kind: 'series', element: element('contact'), ohms }], severities: severityGrid(300) },
          { changes: () => [{ kind: 'series', element: element('contact'), ohms: null }] },
        ],
        weak: [
          { changes: (ohms) => [{ kind: 'series', element: element('motor'), ohms }], severities: severityGrid(300) },
          { changes: () => [{ kind: 'series', element: element('motor'), ohms: null }] },
        ],
        stuck_on: [{ changes: () => [{ kind: 'stuck', region: part.id, state: 'in' }] }],
        shorted: [{ changes: () => [{ kind: 'ohms', element: element('hold'), ohms: 0.05 }] }],
      };
      const ways = modes[mode] ?? [];
      return ways.map((way) => ({
        at: part.id,
        mode,
        weight: weight / ways.length,
        severities: way.severities ?? [],
        fault: (ohms: number) => ({ at: part.id, mode, changes: way.changes(ohms), cures: ['replace'] }),
      }));
    }),
};
