/** Failures of which the book itself says what they do, whatever the kind of part. */
import type { FaultFamily } from '../change.ts';
import type { PartSpec } from '../spec.ts';

export function toldFaults(part: PartSpec): FaultFamily[] {
  return part.failures.flatMap(({ mode, weight, ways = [] }) =>
    ways.map(
      (changes): FaultFamily => ({
        at: part.id,
        mode,
        weight: weight / ways.length,
        severities: [],
        fault: () => ({ at: part.id, mode, changes, cures: ['replace'] }),
      }),
    ),
  );
}

/** The part without them: the rest is its kind's to say. */
export function untold<P extends PartSpec>(part: P): P {
  const failures = part.failures.filter(({ ways }) => ways === undefined);
  return failures.length === part.failures.length ? part : { ...part, failures };
}
