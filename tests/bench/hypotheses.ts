/** All that could be wrong with the machine, each tried on the machine as it stands in a state: one machine, used again and again. */
import { suspectFamilies } from '../../src/diagnosis/index.ts';
import { copyState, type Model, netlistOf, type World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { drive } from '../support/drive.ts';
import { nearly } from './figure.ts';

/** One place, mode and degree, told as changes and as controls left where they should not be. */
export interface Hypothesis {
  id: string;
  changes: Change[];
  controls: [control: number, value: string][];
}

/**
 * Every family at its mildest and its worst, as `tests/diagnosis/hypotheses.test.ts` counts them. Those that lay a path
 * which the plan has not come last, in the order of the book: the others then share one elimination.
 */
export function allHypotheses(model: Model): Hypothesis[] {
  const list = suspectFamilies(model).flatMap((family): Hypothesis[] => {
    const { severities } = family;
    const ends = severities.length < 2 ? [severities[0] ?? 0] : [severities[0], severities[severities.length - 1]];
    const controls = Object.entries(family.controls ?? {}).map(([id, value]): [number, string] => [
      model.controlIndex.get(id) ?? 0,
      value,
    ]);
    return ends.map((degree) => ({
      id: `${family.id} ${degree}`,
      changes: family.faults(degree).flatMap((fault) => fault.changes),
      controls,
    }));
  });
  const lays = ({ changes }: Hypothesis): boolean => changes.some(({ kind }) => kind === 'bridge' || kind === 'chafe');
  return [...list.filter((h) => !lays(h)), ...list.filter(lays)];
}

/** The machine in one state: a fault comes, and all happens that has no delay. */
export class Standing {
  private readonly sound: World;
  private readonly world: World;

  constructor(model: Model, settings: string) {
    this.sound = drive({ model, settings });
    this.world = this.sound.copy();
  }

  /** The settled machine, good until the next call. */
  with(hypothesis: Hypothesis): World {
    return this.put(this.world, hypothesis);
  }

  netlist(hypothesis: Hypothesis): string {
    return netlistOf(this.with(hypothesis), hypothesis.id);
  }

  /** A machine that has seen nothing before must settle alike: states to the letter, volts but for rounding. */
  check(hypothesis: Hypothesis): void {
    const used = this.with(hypothesis);
    const fresh = this.put(this.sound.copy(), hypothesis);
    if (used.state.regions.join() !== fresh.state.regions.join())
      throw new Error(`settled otherwise: ${hypothesis.id}`);
    const { volts } = used.electrics.network;
    fresh.electrics.network.volts.forEach((v, n) => {
      if (!nearly(volts[n], v)) throw new Error(`other volts: ${hypothesis.id}, ${used.model.points[n]}`);
    });
  }

  private put(world: World, { changes, controls }: Hypothesis): World {
    world.state = copyState(this.sound.state);
    for (const [control, value] of controls) world.state.controls[control] = value;
    world.setChanges([...this.sound.changes, ...changes]);
    return world;
  }
}
