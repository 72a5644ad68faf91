/** All that could be wrong with the machine: how many hypotheses its book gives, and that each stands for something. */
import { describe, expect, it, test } from 'vitest';
import { suspectFamilies } from '../../src/diagnosis/index.ts';
import { World } from '../../src/machine/index.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { endsOf } from '../support/hypotheses.ts';
import { sample } from '../support/list.ts';

const model = hobbinModel();
const families = suspectFamilies(model);
const hypotheses = families.flatMap((family) => endsOf(family).map((ohms) => ({ family, degree: ohms ?? 0 })));

test('there are no fewer than 4,500 hypotheses, each family counted at both ends of its severity', () => {
  const byMode = new Map<string, number>();
  for (const { family } of hypotheses) byMode.set(family.mode, (byMode.get(family.mode) ?? 0) + 1);
  const list = [...byMode].sort((a, b) => b[1] - a[1]).map(([mode, count]) => `${mode} ${count}`);
  console.info(`${hypotheses.length} hypotheses in ${families.length} families: ${list.join(', ')}`);
  expect(hypotheses.length).toBeGreaterThanOrEqual(4500);
});

describe('each', () => {
  it('has a name of its own and a weight', () => {
    expect(new Set(families.map((f) => f.id)).size).toBe(families.length);
    expect(families.filter((f) => !(f.weight > 0)).map((f) => f.id)).toEqual([]);
  });

  it('names only what the machine has', () => {
    const broken = hypotheses.filter(({ family, degree }) => {
      const world = new World(
        model,
        family.faults(degree).flatMap((f) => f.changes),
      );
      return !Number.isFinite(world.voltsBetween('F1.a', model.book.reference));
    });
    expect(broken).toEqual([]);
  }, 60_000);

  it('gets worse in one direction', () => {
    for (const { id, severities } of families) {
      const steps = severities.slice(1).map((degree, i) => Math.sign(degree - severities[i]));
      expect([id, new Set(steps).size]).toEqual([id, Math.min(1, steps.length)]);
    }
  });

  it('changes the machine otherwise than its neighbours in the list: no two of one place and mode are the same', () => {
    const seen = new Map<string, string>();
    for (const { family, degree } of hypotheses) {
      const changes = family.faults(degree).flatMap((f) => f.changes);
      const key = `${family.at} ${family.mode} ${JSON.stringify([changes, family.controls])}`;
      expect([family.id, seen.get(key)]).toEqual([family.id, undefined]);
      seen.set(key, family.id);
    }
  });
});

test('a short to a live wire brings volts where none are with everything off', () => {
  const shorts = families.filter((f) => f.mode === 'short_supply');
  const sound = new World(model);
  for (const family of sample(shorts, 40, 17)) {
    const wire = model.wires.get(family.at.slice(2));
    const world = new World(
      model,
      family.faults(0).flatMap((f) => f.changes),
    );
    const volts = (w: World) => w.voltsBetween(wire?.from ?? '', model.book.reference);
    // Some stand at battery volts through a coil; all others rise, whatever load hangs on them.
    if (volts(sound) < 1) expect(volts(world), family.id).toBeGreaterThan(0.5);
  }
});
