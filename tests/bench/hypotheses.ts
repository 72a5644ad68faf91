/** All that could be wrong with the machine, each tried on the machine as it stands in a state: one machine, used again and again. */
import { copyState, type Model, netlistOf, type World } from '../../src/machine/index.ts';
import { drive } from '../support/drive.ts';
import { type Hypothesis, hypothesesOf } from '../support/hypotheses.ts';
import { nearly } from './figure.ts';

/**
 * The whole book, those last that lay a path which the plan has not, in the order of the book: the others then share
 * one elimination.
 */
export function allHypotheses(model: Model): Hypothesis[] {
  const list = hypothesesOf(model);
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
    return netlistOf(this.with(hypothesis), hypothesis.title);
  }

  /** A machine that has seen nothing before must settle alike: states to the letter, volts but for rounding. */
  check(hypothesis: Hypothesis): void {
    const used = this.with(hypothesis);
    const fresh = this.put(this.sound.copy(), hypothesis);
    if (used.state.regions.join() !== fresh.state.regions.join())
      throw new Error(`settled otherwise: ${hypothesis.title}`);
    const { volts } = used.electrics.network;
    fresh.electrics.network.volts.forEach((v, n) => {
      if (!nearly(volts[n], v)) throw new Error(`other volts: ${hypothesis.title}, ${used.model.points[n]}`);
    });
  }

  private put(world: World, { changes, controls }: Hypothesis): World {
    world.state = copyState(this.sound.state);
    for (const [id, value] of Object.entries(controls)) {
      world.state.controls[world.model.controlIndex.get(id) ?? 0] = value;
    }
    world.setChanges([...this.sound.changes, ...changes]);
    return world;
  }
}
