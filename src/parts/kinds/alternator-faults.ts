/** How an alternator fails. Null for a part that has none. */
import type { Change } from '../change.ts';
import type { ElementSpec, Law } from '../spec.ts';
import { elementId, type Plain, type Way } from './kind.ts';

/** What is left of the output current: a lost phase to nothing at all (common practice, no source). */
const OUTPUT_SHARES = [0.66, 0.4, 0.15, 0];
/** Volts above the set ones, up to a regulator that holds nothing down. */
const EXCESS_VOLTS = [0.6, 1, 1.6, 2.4];
/** Ohms of leaking diodes from the output to the housing: 30 mA to half an ampere at rest. */
const LEAK_OHMS = [400, 150, 60, 25];

type Output = ElementSpec & { law: Extract<Law, { kind: 'alternator' }> };
const isOutput = (element: ElementSpec): element is Output => element.law.kind === 'alternator';

function outputOf(part: Plain): Output | undefined {
  return part.elements.find(isOutput);
}

/** It never begins to charge. */
function rests(part: Plain, output: Output): Change[] {
  const { when } = output;
  if (part.kind !== 'general' || when === undefined || !('region' in when)) return [];
  const region = part.regions?.find((r) => r.id === when.region);
  return region === undefined ? [] : [{ kind: 'stuck', region: region.id, state: region.initial }];
}

function ways(part: Plain, severities: readonly number[], changes: (output: Output, degree: number) => Change[]) {
  const output = outputOf(part);
  if (output === undefined) return null;
  return [{ share: 1, severities, changes: (degree: number) => changes(output, degree) }] satisfies Way[];
}

export const alternatorModes = {
  weak: (part: Plain) =>
    ways(part, OUTPUT_SHARES, (output, share) =>
      share === 0
        ? rests(part, output)
        : [
            {
              kind: 'alternator',
              element: elementId(part.id, output.id),
              limitAmps: output.law.limitAmps * share,
            },
          ],
    ),
  overcharge: (part: Plain) =>
    ways(part, EXCESS_VOLTS, (output, excess) => [
      { kind: 'alternator', element: elementId(part.id, output.id), setVolts: output.law.setVolts + excess },
    ]),
  /** The way of the exciting current inside it is broken: its lamp stays dark, and it does not begin. */
  open_exc: (part: Plain) =>
    ways(part, [], (output) => [
      ...part.elements.flatMap(({ id, law }): Change[] =>
        law.kind === 'excitation' ? [{ kind: 'series', element: elementId(part.id, id), ohms: null }] : [],
      ),
      ...rests(part, output),
    ]),
  leak: (part: Plain) => ways(part, LEAK_OHMS, ({ a, b }, ohms) => [{ kind: 'bridge', a, b, ohms }]),
};
