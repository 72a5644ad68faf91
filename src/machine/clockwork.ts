/**
 * Simulated time. From event to event: solve, let what is due happen, find the next moment at which anything can
 * change, turn the engine and draw on the battery until then.
 */
import { Flywheel } from './flywheel.ts';
import { openingMs, type Transition } from './table.ts';
import type { Sampler, World } from './world.ts';

/** Rounds of instant changes at one moment before time is let go on by a millisecond. */
const INSTANT_ROUNDS = 50;
/** A transition has come far enough; guards against a deadline lost to rounding. */
const DUE = 1 - 1e-9;

export class Clockwork {
  private readonly world: World;
  private readonly flywheel: Flywheel;

  constructor(world: World) {
    this.world = world;
    this.flywheel = new Flywheel(world);
  }

  settle(): void {
    for (let round = 0; round < INSTANT_ROUNDS; round++) {
      this.world.solve();
      const due = this.due((t) => t.delayMs === 0);
      if (due.length === 0) return;
      for (const t of due) this.world.take(t);
    }
  }

  advance(ms: number, sample?: Sampler): void {
    const { state } = this.world;
    const end = state.timeMs + ms;
    this.settle();
    while (state.timeMs < end) {
      const waiting = this.due((t) => t.delayMs > 0);
      const step = Math.max(1, Math.min(end - state.timeMs, this.flywheel.stepMs(), ...waiting.map((t) => this.leftMs(t))));
      this.pass(step, waiting);
      const done = waiting.filter((t) => state.progress[t.index] >= DUE);
      for (const t of done) this.world.take(t);
      this.settle();
      sample?.(this.world);
    }
  }

  /** Transitions of one sort whose guard holds now; the others of that sort start over. */
  private due(sort: (t: Transition) => boolean): Transition[] {
    const { state } = this.world;
    const due: Transition[] = [];
    const taken = new Set<number>();
    for (const t of this.world.standing()) {
      if (!sort(t)) continue;
      if (!t.test(this.world)) state.progress[t.index] = 0;
      else if (!taken.has(t.region)) {
        due.push(t);
        if (t.delayMs === 0) taken.add(t.region);
      }
    }
    return due;
  }

  private delayOf(t: Transition): number {
    if (t.curve === undefined) return t.delayMs;
    return openingMs(t.curve.rows, Math.abs(this.world.amps(t.curve.element)) / t.curve.ratingAmps);
  }

  private leftMs(t: Transition): number {
    return Math.ceil((DUE - this.world.state.progress[t.index]) * this.delayOf(t));
  }

  private pass(stepMs: number, waiting: Transition[]): void {
    const { state } = this.world;
    for (const t of waiting) state.progress[t.index] += stepMs / this.delayOf(t);
    this.flywheel.turn(stepMs);
    state.timeMs += stepMs;
  }
}
