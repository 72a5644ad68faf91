/** What moves without jumping: the crankshaft's speed and the battery's charge. */
import { groupsOf } from './groups.ts';
import type { View } from './guard.ts';
import { chargeQuantity, type Model } from './model.ts';
import type { MachineState } from './state.ts';

/** Step while the speed changes, and while it stands, ms. */
const TURNING_STEP_MS = 5;
const STEADY_STEP_MS = 100;
/** Acceleration below which the crankshaft counts as steady, rpm per second. */
const STEADY_RPM_PER_S = 1;
/** Rotor and network settle together in about this time; damps the step, ms. */
const SETTLING_MS = 60;
/** Time in which a firing engine runs up to its idle, ms. Estimate. */
const RUN_UP_MS = 300;
/** The governor holds the idle within this, rpm. */
const IDLE_BAND_RPM = 1;
/** Charge that may be drawn before the rest voltage is looked up again, ampere-hours. */
const CHARGE_STEP_AH = 0.05;
const MS_PER_HOUR = 3_600_000;

/** The machine as the flywheel sees it: its state and the currents of the present solution. */
export interface Turning extends View {
  readonly model: Model;
  readonly state: MachineState;
}

export class Flywheel {
  private readonly world: Turning;
  private readonly rpm: number;
  private readonly motor: number;
  private readonly plunger: number;
  private readonly plungerIn: number;
  private readonly engine: number;
  private readonly batteries: { element: number; quantity: number }[];

  constructor(world: Turning) {
    const { model } = world;
    const index = (map: ReadonlyMap<string, number>, name: string) => map.get(name) ?? -1;
    this.world = world;
    this.rpm = index(model.quantityIndex, 'rpm');
    this.motor = index(model.elementIndex, `${model.book.engine.starter}.motor`);
    this.plunger = index(model.regionIndex, model.book.engine.starter);
    this.plungerIn = model.regions[this.plunger].states.indexOf('in');
    this.engine = index(model.regionIndex, 'engine');
    this.batteries = groupsOf(model).batteries.map((element) => ({
      element,
      quantity: index(model.quantityIndex, chargeQuantity(model.elements[element].owner)),
    }));
  }

  /** Rate of change of crank speed, rpm per second: starter torque against the engine's load (book, section 9). */
  private acceleration(): number {
    const { book } = this.world.model;
    const { state } = this.world;
    const rpm = state.quantities[this.rpm];
    if (state.regions[this.engine] === 1) {
      const gap = book.engine.idleRpm - rpm;
      return Math.abs(gap) < IDLE_BAND_RPM ? 0 : (gap * 1000) / RUN_UP_MS;
    }
    const engaged = state.regions[this.plunger] === this.plungerIn;
    const amps = engaged ? this.world.amps(this.motor) : 0;
    const load = book.engine.loadAmps + book.engine.loadAmpsPerRpm * rpm;
    if (rpm <= 0 && amps <= load) return 0;
    return (amps - load) / book.engine.inertia;
  }

  /** How long the present currents may be taken as constant, ms. */
  stepMs(): number {
    let step = Number.MAX_SAFE_INTEGER;
    const acceleration = this.acceleration();
    if (acceleration !== 0) {
      step = Math.abs(acceleration) < STEADY_RPM_PER_S ? STEADY_STEP_MS : TURNING_STEP_MS;
    }
    for (const { element } of this.batteries) {
      const amps = Math.abs(this.world.amps(element));
      if (amps > 0.001) step = Math.min(step, Math.max(1, Math.floor((CHARGE_STEP_AH / amps) * MS_PER_HOUR)));
    }
    return step;
  }

  /** Writes speed and charge after a step over `quantities`, which hold those before it. */
  turn(stepMs: number, quantities: Float64Array): void {
    const acceleration = this.acceleration();
    const gained = (acceleration * stepMs) / 1000 / (1 + stepMs / SETTLING_MS);
    quantities[this.rpm] = Math.max(0, quantities[this.rpm] + gained);
    for (const { element, quantity } of this.batteries) {
      // Current counted from + to - through the element is negative while the battery gives.
      const drawn = (-this.world.amps(element) * stepMs) / MS_PER_HOUR;
      quantities[quantity] = Math.max(0, quantities[quantity] + drawn);
    }
  }
}
