/** Random use of the Hobbin 45 for property tests: controls, holds, surroundings, faults and repairs. */
import fc from 'fast-check';
import type { Model, World } from '../../src/machine/index.ts';
import { type Change, contentOf } from '../../src/parts/index.ts';

export type Move =
  | { kind: 'control'; control: string; value: string; holdMs: number }
  | { kind: 'quantity'; quantity: string; value: number; holdMs: number }
  | { kind: 'region'; region: string; state: string; holdMs: number }
  | { kind: 'changes'; changes: Change[]; holdMs: number };

/** Holds around the machine's own delays (5 ms to a few seconds), and nothing at all. */
const holdMs = fc.oneof(fc.constant(0), fc.integer({ min: 1, max: 60 }), fc.integer({ min: 60, max: 4000 }));

function controlMove(model: Model): fc.Arbitrary<Move> {
  const turn = (control: string, values: string[]) =>
    fc.record({
      kind: fc.constant('control' as const),
      control: fc.constant(control),
      value: fc.constantFrom(...values),
      holdMs,
    });
  const any = fc.constantFrom(...model.book.controls).chain((c) => turn(c.id, c.values));
  const starting = model.book.controls.filter((c) => c.starts === true);
  const key = fc.constantFrom(...starting).chain((c) => turn(c.id, c.values));
  return fc.oneof({ weight: 2, arbitrary: key }, { weight: 3, arbitrary: any });
}

/** Faults of the parts as their kinds declare them, of wires, and regions that are stuck. */
export function changesOf(model: Model): fc.Arbitrary<Change[]> {
  const families = model.book.parts.flatMap((part) => contentOf(part).faults);
  const part = fc
    .constantFrom(...families)
    .chain((family) =>
      fc
        .constantFrom(...(family.severities.length > 0 ? family.severities : [0]))
        .map((ohms) => family.fault(ohms).changes),
    );
  const ohms = fc.constantFrom(null, 0.05, 1, 40);
  const wire = fc.constantFrom(...model.book.wires).chain((w) =>
    fc.oneof(
      ohms.map((x): Change[] => [{ kind: 'series', element: `W:${w.id}`, ohms: x }]),
      fc.constant<Change[]>([{ kind: 'chafe', wire: w.id, at: 0.5, to: model.book.reference, ohms: 0.08 }]),
    ),
  );
  const stuck = fc
    .constantFrom(...model.regions)
    .chain((r) => fc.constantFrom(...r.states).map((state): Change[] => [{ kind: 'stuck', region: r.id, state }]));
  return fc.oneof(part, wire, stuck);
}

function otherMove(model: Model): fc.Arbitrary<Move> {
  // Senders have ohms as their quantity: half to one and a half times the book's, never none.
  const quantity = fc.constantFrom(...model.book.quantities).chain((q) =>
    fc.integer({ min: 50, max: 150 }).chain((percent) =>
      fc.record({
        kind: fc.constant('quantity' as const),
        quantity: fc.constant(q.id),
        value: fc.constant(q.initial === 0 ? percent / 10 : (q.initial * percent) / 100),
        holdMs,
      }),
    ),
  );
  const region = fc.constantFrom(...model.regions).chain((r) =>
    fc.record({
      kind: fc.constant('region' as const),
      region: fc.constant(r.id),
      state: fc.constantFrom(...r.states),
      holdMs,
    }),
  );
  const changes = fc.array(changesOf(model), { maxLength: 2 }).map((lists) => lists.flat());
  const repair = fc.record({ kind: fc.constant('changes' as const), changes, holdMs });
  return fc.oneof(quantity, region, repair);
}

export function movesOf(model: Model, maxLength: number): fc.Arbitrary<Move[]> {
  const move = fc.oneof({ weight: 6, arbitrary: controlMove(model) }, { weight: 1, arbitrary: otherMove(model) });
  return fc.array(move, { minLength: 1, maxLength });
}

export function makeMove(world: World, move: Move, sample?: (world: World) => void): void {
  if (move.kind === 'control') world.setControl(move.control, move.value);
  if (move.kind === 'quantity') world.setQuantity(move.quantity, move.value);
  if (move.kind === 'region') world.setRegion(move.region, move.state);
  if (move.kind === 'changes') world.setChanges(move.changes);
  world.advance(move.holdMs, sample);
}
