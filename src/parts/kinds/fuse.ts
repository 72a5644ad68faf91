import { severityGrid } from '../change.ts';
import { elementId, type Kind, type PartOf } from './kind.ts';

/**
 * Opening times, [multiple of rating, ms]: the book's timings (section 4), inside the boxes of ISO 8820-3 for blades
 * and of bolt-in series datasheets (both from memory). Beyond six times, melting energy is constant: time falls as 1/I².
 */
const CURVES: Record<'blade' | 'bolt-in', [number, number][]> = {
  blade: [
    [1.35, 60_000],
    [2, 1_000],
    [3.5, 100],
    [6, 30],
    [60, 0.3],
  ],
  'bolt-in': [
    [1.6, 300_000],
    [2, 10_000],
    [4, 300],
    [6, 133],
    [60, 1.33],
  ],
};

export const fuse: Kind<PartOf<'fuse'>> = {
  elements: (part) => [
    {
      id: 'link',
      a: `${part.id}.a`,
      b: `${part.id}.b`,
      law: { kind: 'contact', ohms: part.ohms },
      when: { region: part.id, is: ['intact'] },
    },
  ],
  regions: (part) => {
    const curve = CURVES[part.type];
    const link = elementId(part.id, 'link');
    return [
      {
        id: part.id,
        states: ['intact', 'blown'],
        initial: 'intact',
        transitions: [
          {
            from: 'intact',
            to: 'blown',
            when: { amps: [link], above: curve[0][0] * part.ratingAmps },
            afterMs: { element: link, ratingAmps: part.ratingAmps, curve },
          },
        ],
      },
    ];
  },
  faults: (part) =>
    part.failures.flatMap(({ mode, weight }) => {
      const link = elementId(part.id, 'link');
      const open = mode === 'open';
      if (!open && mode !== 'high_r') return [];
      return {
        at: part.id,
        mode,
        weight,
        severities: open ? [] : severityGrid(part.ratingAmps),
        fault: (ohms) => ({
          at: part.id,
          mode,
          changes: [{ kind: 'series', element: link, ohms: open ? null : ohms }],
          cures: ['replace', 'fuse'],
        }),
      };
    }),
};
