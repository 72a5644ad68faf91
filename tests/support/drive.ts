/** Brings a machine into a named state as an operator would, so that its timers and relays have their history. */
import { type Model, World } from '../../src/machine/index.ts';
import type { Change } from '../../src/parts/index.ts';
import { settingsOf } from './states.ts';

/** Key to run long enough for A1 to wake and its 3 s prime to end, ms. */
const RUN_MS = 5000;
/** While it still primes: "first 3 s of key run", ms. */
const PRIME_MS = 1000;
/** The crank stands at its speed, and the engine hasn't fired (it needs 800 ms above 130 rpm), ms. */
const CRANK_MS = 600;
/** K2 8 ms, K1 8 ms, plunger 40 ms: the contact is closed and the crankshaft still stands, ms. */
const STALL_MS = 56;
/** Controllers, alternator and valves have settled on a running engine, ms. */
const RUNNING_MS = 3000;

/** Settings that are not a control or quantity of the book: how long, and which switches are worked after the key. */
const LATER = ['key', 'rpm', 'prime', 'stall', 'second', 'hydsw', 'trk'];

interface Driven {
  model: Model;
  /** As in the book's table of states: `key=start rpm=220 lights=head`. */
  settings: string;
  changes?: readonly Change[];
  /** Done to the machine before the key is turned: fuses found blown, charge, tank. */
  arrive?: (world: World) => void;
}

export function drive({ model, settings, changes = [], arrive }: Driven): World {
  const wanted = settingsOf(settings);
  const world = new World(model, [...trackerHeld(model, wanted.get('trk') ?? 'sleep'), ...changes]);
  arrive?.(world);
  for (const [name, value] of wanted) {
    if (LATER.includes(name)) continue;
    if (model.controlIndex.has(name)) world.setControl(name, value);
    else world.setQuantity(name, Number(value));
  }
  world.settle();
  const key = wanted.get('key') ?? 'off';
  if (key === 'off') return world;
  world.setControl('key', 'run');
  world.advance(wanted.has('prime') ? PRIME_MS : RUN_MS);
  if (key === 'start') {
    world.setControl('key', 'start');
    world.advance(wanted.has('stall') ? STALL_MS : CRANK_MS);
    return world;
  }
  const rpm = Number(wanted.get('rpm') ?? 0);
  if (rpm > 0) runEngine(world, rpm, wanted);
  else switchOn(world, wanted);
  return world;
}

/** The book's tables are computed with a tracker that sleeps (`trk=sleep`), also while the key is on. */
function trackerHeld(model: Model, state: string): Change[] {
  if (!model.regionIndex.has('A5')) return [];
  return [{ kind: 'stuck', region: 'A5', state: state === 'awake' ? 'awake' : 'asleep' }];
}

/** The engine runs at this speed; what must be switched on after a start is switched on then. */
function runEngine(world: World, rpm: number, wanted: ReadonlyMap<string, string>): void {
  world.setRegion('engine', 'running');
  world.setQuantity('rpm', rpm);
  world.advance(RUNNING_MS);
  switchOn(world, wanted);
  world.setQuantity('rpm', rpm);
  world.settle();
}

/** What the operator switches on once the controllers are awake: hydraulics must go from low to high after a start. */
function switchOn(world: World, wanted: ReadonlyMap<string, string>): void {
  if (wanted.has('hydsw')) {
    world.setControl('hydsw', '1');
    world.advance(1000);
  }
  if (wanted.has('second')) press(world, 'btn2');
}

function press(world: World, control: string): void {
  world.setControl(control, '1');
  world.advance(100);
  world.setControl(control, '0');
  world.advance(200);
}
