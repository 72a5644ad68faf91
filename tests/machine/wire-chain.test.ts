/** Several breaks, bad spots and touches on one wire: a chain along its length, in whatever order they are told. */
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { netlistOf, nodeOf, World } from '../../src/machine/index.ts';
import { wireChains } from '../../src/machine/wire-chain.ts';
import type { Change } from '../../src/parts/index.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { sample } from '../support/list.ts';
import { solveNetlist } from '../support/ngspice.ts';
import { bring } from '../support/outside.ts';

const model = hobbinModel();
const WIRE = '207A';
const [START, END] = ['a', 'b'].map((end) => {
  const wire = model.elements[model.elementIndex.get(`W:${WIRE}`) ?? 0];
  return end === 'a' ? wire.a : wire.b;
});
const METALS = ['GND1.M', 'GND2.M', 'GND4.M', 'F1.a'];

const share = fc.double({ min: 0.01, max: 0.99, noNaN: true });
const ohms = fc.double({ min: 0.01, max: 5000, noNaN: true });
const broken = fc.record({
  kind: fc.constant('series' as const),
  element: fc.constant(`W:${WIRE}`),
  ohms: fc.oneof(fc.constant(null), ohms),
  at: share,
});
const parts = { kind: fc.constant('chafe' as const), wire: fc.constant(WIRE), at: share, toAt: share, ohms };
const touch = fc.record({ ...parts, to: fc.constantFrom(...METALS, 'W:206D', 'W:404A') });
/** Touching other wires, a current may go round a break; metal alone is told apart end by end. */
const onMetal = fc.array(fc.oneof(broken, fc.record({ ...parts, to: fc.constantFrom(...METALS) })), {
  minLength: 1,
  maxLength: 5,
});
const spots = fc.array(fc.oneof(broken, touch), { minLength: 1, maxLength: 5 });

/** Ohms between two points with nothing else laid on the machine than these changes. */
const between = (changes: Change[], a: string, b: string): number => {
  const world = new World(model, changes);
  return world.ohms(nodeOf(model, a), nodeOf(model, b));
};

/** Everything that can be seen of a machine at rest, battery connected. */
const volts = (changes: Change[]): number[] => {
  const world = new World(model, changes);
  return model.points.map((point) => world.voltsBetween(point, model.book.reference));
};

/** Are the two ends of a wire, and what touches it, on one piece of copper? Told by walking along it. */
function piecesOf(changes: readonly Change[]): { start: Set<string>; end: Set<string>; whole: boolean } {
  const cuts = changes.flatMap((c) => (c.kind === 'series' && c.ohms === null ? [c.at ?? 0.5] : []));
  const touches = changes.flatMap((c) => (c.kind === 'chafe' ? [c] : []));
  const [first, last] = [Math.min(2, ...cuts), Math.max(-1, ...cuts)];
  return {
    start: new Set(touches.filter((c) => c.at < first).map((c) => c.to)),
    end: new Set(touches.filter((c) => c.at >= last).map((c) => c.to)),
    whole: cuts.length === 0,
  };
}

describe('one wire', () => {
  it('broken beside its chafe: the end beyond the break is free', () => {
    const touched: Change = { kind: 'chafe', wire: WIRE, at: 0.7, to: 'GND2.M', ohms: 0.1 };
    const parted: Change = { kind: 'series', element: `W:${WIRE}`, ohms: null, at: 0.3 };
    const lifted = ['L:207A@from'].map((element): Change => ({ kind: 'series', element, ohms: null }));
    const unplugged = model.book.connectors
      .filter((c) => c.id === 'X10')
      .flatMap((c) => c.pins.map((pin): Change => ({ kind: 'series', element: `X:X10.${pin.pin}`, ohms: null })));
    const free = [...lifted, ...unplugged, touched, parted];
    expect(between(free, 'X10.8.a', 'GND2.M')).toBeLessThan(0.13);
    expect(between(free, '207A@from', 'GND2.M')).toBeGreaterThan(1e9);
    // On the other side of the break it is the other end that is free.
    const other = [...lifted, ...unplugged, touched, { ...parted, at: 0.9 }];
    expect(between(other, 'X10.8.a', 'GND2.M')).toBeGreaterThan(1e9);
    expect(between(other, '207A@from', 'GND2.M')).toBeLessThan(0.13);
  });

  it('twice chafed has both touches: neither takes the place of the other', () => {
    const touches = [0.2, 0.8].map((at): Change => ({ kind: 'chafe', wire: WIRE, at, to: 'GND2.M', ohms: 2 }));
    const one = between([touches[0]], '207A@from', 'GND2.M');
    // Two equal ways side by side over next to no copper: half the ohms.
    expect(between(touches, '207A@from', 'GND2.M')).toBeCloseTo(one / 2, 1);
    expect(between(touches, '207A@from', 'X10.8.a')).toBeLessThan(0.1);
  });

  it('touching another wire joins the two and nothing else', () => {
    const [h, l] = ['901D', '902D'];
    const touched: Change = { kind: 'chafe', wire: h, at: 0.5, to: `W:${l}`, ohms: 0.5 };
    const [wireH, wireL] = [h, l].map((id) => model.wires.get(id));
    const [from, to] = [wireH?.from ?? '', wireL?.from ?? ''];
    expect(between([touched], from, to)).toBeLessThan(0.5 + (wireH?.ohms ?? 0) + (wireL?.ohms ?? 0));
    expect(between([], from, to)).toBeGreaterThan(50);
  });
});

test('the order in which the spots are told is no matter', () => {
  fc.assert(
    fc.property(
      spots.chain((all) => fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length }))),
      ([one, other]) => {
        const [first, second] = [volts(one), volts(other)];
        first.forEach((value, node) => {
          expect(Math.abs(second[node] - value)).toBeLessThan(1e-9 * Math.max(1, Math.abs(value)));
        });
      },
    ),
    { numRuns: 60 },
  );
});

test('an end has a path to what touches its own piece of the wire, and to nothing beyond a break', () => {
  fc.assert(
    fc.property(onMetal, (changes) => {
      const { cores, bridges } = wireChains(model, changes);
      if (cores.size === 0) return;
      const { start, end, whole } = piecesOf(changes);
      const core = cores.get(model.elementIndex.get(`W:${WIRE}`) ?? -1);
      expect(core === null).toBe(!whole);
      const touched = (node: number) =>
        new Set(bridges.flatMap((b) => (b.a === node ? [b.b] : b.b === node ? [b.a] : [])));
      for (const metal of METALS) {
        expect(touched(START).has(nodeOf(model, metal))).toBe(start.has(metal));
        expect(touched(END).has(nodeOf(model, metal))).toBe(end.has(metal));
      }
    }),
    { numRuns: 300 },
  );
});

test('one more touch never raises the ohms to metal (Rayleigh: more conductance, less resistance)', () => {
  fc.assert(
    fc.property(fc.array(touch, { minLength: 1, maxLength: 3 }), touch, (some, more) => {
      const before = between(some, '207A@from', 'GND2.M');
      // Two places are never quite one: where spots fall together the copper between them counts 1 nano-ohm each.
      const places = 1e-9 * (some.length + 1);
      expect(between([...some, more], '207A@from', 'GND2.M')).toBeLessThanOrEqual(before * (1 + 1e-9) + places);
    }),
    { numRuns: 60 },
  );
});

/** The machine's netlist with these wires taken out and laid again piece by piece, each spot a node of its own. */
function laidOut(world: World, changes: readonly Change[]): string {
  const wires = new Set(
    changes.flatMap((c) => (c.kind === 'chafe' ? [c.wire, ...(c.to.startsWith('W:') ? [c.to.slice(2)] : [])] : [])),
  );
  const lines = netlistOf(world, 'laid out')
    .split('\n')
    .filter(
      (line) => !line.startsWith('RB') && !line.startsWith('.') && ![...wires].some((id) => line.endsWith(`; W:${id}`)),
    );
  const name = (node: number) => (node < 0 ? '0' : `n${node}`);
  const nameOf = (point: string) => name(nodeOf(model, point));
  const marks = changes.flatMap((c, i) => {
    if (c.kind === 'series') return [{ wire: c.element.slice(2), at: c.at ?? 0.5, ohms: c.ohms, touch: '' }];
    if (c.kind !== 'chafe') return [];
    const other = c.to.startsWith('W:') ? `t${i}b` : nameOf(c.to);
    lines.push(`RT${i} t${i}a ${other} ${c.ohms}`);
    const own = [{ wire: c.wire, at: c.at, ohms: 0, touch: `t${i}a` }];
    return c.to.startsWith('W:') ? [...own, { wire: c.to.slice(2), at: c.toAt ?? 0.5, ohms: 0, touch: `t${i}b` }] : own;
  });
  for (const wire of wires) {
    const element = model.elements[model.elementIndex.get(`W:${wire}`) ?? 0];
    const total = element.law.kind === 'resistance' ? element.law.ohms : 0;
    let [from, since, k] = [name(element.a), 0, 0];
    const piece = (to: string, pieceOhms: number | null): void => {
      if (pieceOhms !== null) lines.push(`RP${wire}${k} ${from} ${to} ${Math.max(pieceOhms, 1e-9)}`);
      // Every node leaks, as those of the machine do: a piece between two breaks hangs on nothing else.
      lines.push(`RQ${wire}${k++} ${to} 0 1e12`);
      from = to;
    };
    for (const mark of marks.filter((m) => m.wire === wire).sort((p, q) => p.at - q.at)) {
      const here = mark.touch === '' ? `p${wire}${k}` : mark.touch;
      piece(here, total * (mark.at - since));
      since = mark.at;
      if (mark.touch === '') piece(`p${wire}${k}`, mark.ohms);
    }
    piece(name(element.b), total * (1 - since));
  }
  return `${[...lines, '.op', '.end'].join('\n')}\n`;
}

/** A fixed choice of chains on wires of every harness, some on two wires at once. */
function chosenChains(count: number): Change[][] {
  const wires = sample(model.book.wires, count * 2, 71);
  const shares = [0.15, 0.35, 0.55, 0.75, 0.95];
  return Array.from({ length: count }, (_, i) => {
    const [one, other] = [wires[2 * i], wires[2 * i + 1]];
    const at = (k: number) => sample(shares, 5, 31 * i)[k];
    const touch = (k: number, to: string): Change => ({
      kind: 'chafe',
      wire: one.id,
      at: at(k),
      to,
      toAt: at(k + 1),
      ohms: [0.08, 3, 900][i % 3],
    });
    const parted: Change = { kind: 'series', element: `W:${one.id}`, ohms: i % 2 === 0 ? null : 40, at: at(2) };
    const all = [touch(0, METALS[i % METALS.length]), parted, touch(1, `W:${other.id}`)];
    return i % 4 === 3 ? [...all, touch(3, 'GND1.M')] : all;
  });
}

test('volts of the whole machine as ngspice has them, with every spot a node of its own', {
  timeout: 120_000,
}, async () => {
  const stands = [{ key: 'off' }, { key: 'run' }, { key: 'start' }];
  for (const [i, changes] of chosenChains(24).entries()) {
    const world = bring(new World(model, changes), stands[i % 3]);
    const points = await solveNetlist(laidOut(world, changes));
    const off: string[] = [];
    for (const [point, judged] of points) {
      const ours = world.voltsBetween(point, model.book.reference);
      if (!(Math.abs(ours - judged) <= 1e-5 + 1e-6 * Math.abs(judged)))
        off.push(`${point}: ngspice ${judged}, here ${ours}`);
    }
    expect(off, JSON.stringify(changes)).toEqual([]);
  }
});
