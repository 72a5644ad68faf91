/** Which staircase to show first, and at which step of it the two machines go apart. */
import type { Stair, Staircase } from '../../grading/index.ts';
import type { Session } from '../state/session.ts';

/** Volts lost in the step down to stair `i`; for the first, what the supply stands below 0 V. */
export const lost = (stairs: readonly Stair[], i: number, of: 'here' | 'sound'): number =>
  (i === 0 ? 0 : stairs[i - 1][of]) - stairs[i][of];

const apart = (stairs: readonly Stair[], i: number): number =>
  Math.abs(lost(stairs, i, 'here') - lost(stairs, i, 'sound'));

/** Where the supply itself is this much of the largest difference, all that it feeds loses less because of it. */
const SUPPLY_SHARE = 0.8;

/** Index of the lower end of the step at which they differ most; 0 where it is the supply that does. */
export function parting(stairs: readonly Stair[]): number {
  let at = 1;
  for (let i = 2; i < stairs.length; i++) if (apart(stairs, i) > apart(stairs, at)) at = i;
  return supplyApart(stairs) > SUPPLY_SHARE * apart(stairs, at) ? 0 : at;
}

const supplyApart = ([first]: readonly Stair[]): number => Math.abs(first.sound - first.here);

/** The one in which the two differ most; among those on which the cause lies, where it lies on any. */
export function mostTelling({ model, job }: Pick<Session, 'model' | 'job'>, staircases: readonly Staircase[]): string {
  const [cause] = job.causes;
  const wire = cause?.at.startsWith('W:') ? model.wires.get(cause.at.slice(2)) : undefined;
  const owner = cause?.at.replace(/^X:/, '') ?? '';
  const isAt = (point: string): boolean =>
    wire === undefined ? point.startsWith(`${owner}.`) : point === wire.from || point === wire.to;
  const difference = ({ stairs }: Staircase): number => Math.max(0, ...stairs.map((_, i) => apart(stairs, i)));
  const onCause = staircases.filter(({ stairs }) => stairs.some(({ point }) => isAt(point)));
  const among = onCause.length > 0 ? onCause : staircases;
  return [...among].sort((a, b) => difference(b) - difference(a))[0]?.id ?? '';
}
