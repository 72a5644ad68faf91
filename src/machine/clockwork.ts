/**
 * Simulated time. From event to event: solve, let what is due happen, find the next moment at which anything can
 * change, turn the engine and draw on the battery until then.
 */
import { Flywheel, type Turning } from './flywheel.ts';
import type { Stretch } from './keeper.ts';
import { DUE, delayMsOf, type Standing, type Transition } from './table.ts';

/** Rounds of instant changes at one moment before time is let go on by a millisecond. */
const INSTANT_ROUNDS = 50;

/** What the clockwork drives. */
export interface Driven extends Turning {
  solve(): void;
  standing(): Standing;
  scan(due: readonly Transition[]): void;
  pass(stretch: Stretch): void;
}

export class Clockwork {
  private readonly world: Driven;
  private readonly flywheel: Flywheel;

  constructor(world: Driven) {
    this.world = world;
    this.flywheel = new Flywheel(world);
  }

  settle(): void {
    for (let round = 0; round < INSTANT_ROUNDS; round++) {
      this.world.solve();
      const due = this.due();
      if (due.length === 0) return;
      this.world.scan(due);
    }
  }

  advance(ms: number, sample?: () => void): void {
    const { world } = this;
    const end = world.state.timeMs + ms;
    this.settle();
    while (world.state.timeMs < end) {
      world.pass(this.stretch(end - world.state.timeMs));
      this.settle();
      sample?.();
    }
  }

  /** Transitions without a delay whose guard holds now, at most one a region. */
  private due(): readonly Transition[] {
    let due: Transition[] | null = null;
    let region = -1;
    for (const t of this.world.standing().instant) {
      if (t.region === region || !t.test(this.world)) continue;
      due ??= [];
      due.push(t);
      region = t.region;
    }
    return due ?? NONE;
  }

  /** From now to the next moment at which anything can change, at most `limitMs` away. */
  private stretch(limitMs: number): Stretch {
    const { state } = this.world;
    let waiting: Transition[] | null = null;
    let lapsed: Transition[] | null = null;
    let ms = Math.min(limitMs, this.flywheel.stepMs());
    for (const t of this.world.standing().delayed) {
      if (t.test(this.world)) {
        waiting ??= [];
        waiting.push(t);
        ms = Math.min(ms, Math.ceil((DUE - state.progress[t.index]) * delayMsOf(t, this.world)));
      } else if (state.progress[t.index] !== 0) {
        lapsed ??= [];
        lapsed.push(t);
      }
    }
    ms = Math.max(1, ms);
    const turn = (quantities: Float64Array): void => this.flywheel.turn(ms, quantities);
    return { ms, waiting: waiting ?? NONE, lapsed: lapsed ?? NONE, turn };
  }
}

const NONE: readonly Transition[] = [];
