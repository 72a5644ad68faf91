/** An attempt worked through from a list of wishes, and everything in it that must be the same in every engine. */
import { type Action, type Attempt, hashOf, isRefusal } from '../../src/job/index.ts';
import { possible } from './possible.ts';

export interface Worked {
  /** Of the canonical log. */
  log: string;
  /** Of the volts of every point when all is done, to the last bit. */
  volts: string;
  /** Of each action: its entry's hash and the reading before it is rounded for the display; or why it was refused. */
  steps: string[];
}

export function worked(attempt: Attempt, wishes: readonly Action[]): Worked {
  const steps = wishes.map((wish, i) => {
    const result = attempt.act(possible(attempt, wish, i));
    return isRefusal(result) ? `${result.code} ${result.what}` : `${result.entry.hash} ${result.seen.value ?? '-'}`;
  });
  const { world } = attempt.rig;
  const volts = world.model.points.map((point) => world.voltsBetween(point, world.model.book.reference));
  return { log: hashOf(attempt.log), volts: hashOf(volts), steps };
}
