/** Random wishes bent to what can be done where one stands: else nearly all of them would only be refused. */
import {
  type Action,
  type Attempt,
  type Bench,
  liftableAt,
  pointsHere,
  type Refusal,
  repairsFor,
} from '../../src/job/index.ts';
import type { Model } from '../../src/machine/index.ts';

/** A large prime: neighbours in a sequence take ids that lie far apart. */
const STRIDE = 7919;
/** Every so often a wish stays as it is, so that refusals are tried as well. */
const LEFT_ALONE = 5;
/** As often, one goes to where the wish can be done before trying anything else where one stands. */
const GO_THERE = 3;

/**
 * The wish itself where it can be done. Else what stands in its way is done first, or the same kind of action on
 * something else, now and then one and then the other; the wish itself where there is neither.
 */
export function possible(attempt: Attempt, wish: Action, i: number): Action {
  const refusal = attempt.refusal(wish);
  if (i % LEFT_ALONE === 0 || refusal === null) return wish;
  const before = firstOf(attempt, wayTo(refusal), i);
  if (i % GO_THERE === 0 && wish.do !== 'lead' && before !== null) return before;
  return firstOf(attempt, othersLike(attempt, wish), i) ?? before ?? wish;
}

function firstOf(attempt: Attempt, actions: readonly Action[], i: number): Action | null {
  for (let k = 0; k < actions.length; k++) {
    const action = actions[(i * STRIDE + k) % actions.length];
    if (attempt.refusal(action) === null) return action;
  }
  return null;
}

/** The refusal says what is in the way, or where the thing is. */
function wayTo({ code, what }: Refusal): Action[] {
  switch (code) {
    case 'not-here':
      return [{ do: 'walk', zone: what }];
    case 'covered':
      return [{ do: 'open', access: what }];
    case 'must-be-parted':
      return [{ do: 'unplug', connector: what }];
    case 'needs-helper':
      return [{ do: 'helper', call: true }];
    case 'seat-up':
      return [{ do: 'close', access: what }];
    default:
      return [];
  }
}

/** The same kind of action on whatever the book has for it. */
function othersLike({ model, bench }: Attempt, wish: Action): Action[] {
  const { parts, connectors, access, controls } = model.book;
  const here = parts.map((p) => p.id);
  switch (wish.do) {
    case 'lead':
      return wish.point === null ? [] : pointsHere(model, bench).map((point) => ({ ...wish, point }));
    case 'read':
      return towardsReading(model, bench);
    case 'open':
    case 'close':
      return access.map((a) => ({ ...wish, access: a.id }));
    case 'pull':
      return here.map((part) => ({ ...wish, part }));
    case 'refit':
      return bench.pulled.map((part) => ({ ...wish, part }));
    case 'exchange': {
      const relays = parts.filter((p) => p.kind === 'relay').map((p) => p.id);
      return relays.flatMap((part) => relays.map((other) => ({ ...wish, part, with: other })));
    }
    case 'unplug':
      return connectors.map((c) => ({ ...wish, connector: c.id }));
    case 'plug':
      return bench.unplugged.map((connector) => ({ ...wish, connector }));
    case 'lift':
      return here.flatMap((part) => liftableAt(model, part)).map((end) => ({ ...wish, end }));
    case 'land':
      return bench.lifted.map((end) => ({ ...wish, end }));
    case 'look':
    case 'wiggle':
      return [...here, bench.zone].map((at) => ({ ...wish, at }));
    case 'repair':
      return here.flatMap((target) => repairsFor(model, target).map((verb) => ({ ...wish, verb, target })));
    case 'operate':
      return controls.flatMap((c) => c.values.map((value) => ({ ...wish, control: c.id, value })));
    default:
      return [];
  }
}

/** What is still missing for a reading: a lead that hangs loose, or an instrument that is off. */
function towardsReading(model: Model, bench: Bench): Action[] {
  const loose = (['red', 'black'] as const).find((lead) => bench.leads[lead] === null);
  if (loose === undefined) return [{ do: 'dial', fn: 'volts-dc' }];
  return pointsHere(model, bench).map((point) => ({ do: 'lead', lead: loose, point }));
}
