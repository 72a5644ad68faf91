import { readFileSync } from 'node:fs';
import { type MeterFunction, meterLoad, rangesOf, readMeter } from '../instruments/index.ts';
import { firstBench, operatorZone, Rig } from '../job/index.ts';
import { operateSteps } from '../job/steps.ts';
import { netlistOf, type World } from '../machine/index.ts';
import type { Change } from '../parts/index.ts';
import { jobOf } from './library.ts';
import { pairOf, parse, Usage } from './options.ts';

const OPTIONS = {
  set: { type: 'string', multiple: true },
  red: { type: 'string' },
  black: { type: 'string' },
  meter: { type: 'string', default: 'volts-dc' },
  range: { type: 'string' },
  'lead-ohms': { type: 'string', default: '0' },
  unplug: { type: 'string', multiple: true },
  pull: { type: 'string', multiple: true },
  lift: { type: 'string', multiple: true },
  healthy: { type: 'boolean' },
  at: { type: 'string', default: '500' },
  pairs: { type: 'string' },
  leads: { type: 'boolean' },
  json: { type: 'boolean' },
} as const;

const METERS: readonly MeterFunction[] = ['volts-dc', 'ohms', 'continuity', 'diode', 'amps', 'volts-lo'];

interface Setup {
  world: World;
  values: ReturnType<typeof parse<typeof OPTIONS>>['values'];
  rest: string[];
  id: string;
}

/** The machine of a job after its controls have been set, one after the other, read `--at` ms after the last. */
function setUp(args: string[]): Setup {
  const { values, positionals } = parse(args, OPTIONS);
  const [name, ...rest] = positionals;
  if (name === undefined) throw new Usage('a job is needed');
  const { model, job } = jobOf(name);
  const rig = values.healthy ? Rig.arriving(model, [], {}) : Rig.arriving(model, job.faults, job.arrival);
  const bench = {
    ...firstBench(model.book),
    zone: operatorZone(model.book),
    unplugged: values.unplug ?? [],
    pulled: values.pull ?? [],
    lifted: values.lift ?? [],
  };
  rig.run([{ hands: bench }]);
  for (const text of values.set ?? []) {
    const [control, value] = pairOf(text);
    if (!model.controlIndex.has(control)) throw new Usage(`no such control: ${control}`);
    const steps = operateSteps(model.book, bench, (id) => rig.world.controlOf(id), control, value);
    // Held: the spring back and what comes after it are left out.
    const end = steps.findIndex((step) => 'notice' in step);
    rig.run(steps.slice(0, end - 1));
    rig.world.advance(Number(values.at));
  }
  return { world: rig.world, values, rest, id: job.id };
}

/** The machine with the instrument in it for as long as a reading takes; itself where that adds nothing. */
function loaded(world: World, load: readonly Change[], ms: number): World {
  if (load.length === 0) return world;
  const copy = world.copy();
  copy.setChanges([...world.changes, ...load]);
  copy.advance(ms);
  return copy;
}

/** The range by its name, `60 V`; null where none was asked for. */
function rangeNamed(fn: MeterFunction, name: string | undefined): number | null {
  if (name === undefined) return null;
  const range = rangesOf(fn).indexOf(name);
  if (range < 0) throw new Usage(`--range is one of ${rangesOf(fn).join(', ')}`);
  return range;
}

export function reading(args: string[]): number {
  const { world, values } = setUp(args);
  const fn = METERS.find((name) => name === values.meter);
  if (fn === undefined) throw new Usage(`--meter is one of ${METERS.join(', ')}`);
  const setting = { range: rangeNamed(fn, values.range), leadOhms: Number(values['lead-ohms']) };
  const pairs =
    values.pairs === undefined
      ? [[values.red, values.black]]
      : readFileSync(values.pairs, 'utf8')
          .trim()
          .split('\n')
          .map((l) => l.trim().split(/\s+/));
  for (const [red, black] of pairs) {
    if (red === undefined || black === undefined) throw new Usage('--red POINT and --black POINT are needed');
    const shown = readMeter(loaded(world, meterLoad(fn, red, black), Number(values.at)), fn, red, black, setting);
    if (values.json) console.log(JSON.stringify({ value: shown.value, unit: shown.unit, display: shown.text }));
    else console.log(`${shown.text} ${shown.unit}`);
  }
  return 0;
}

export function netlist(args: string[]): number {
  const { world, values, rest, id } = setUp(args);
  const [red, black] = rest;
  const leads = values.leads && red !== undefined && black !== undefined ? { red, black, ohms: 10e6 } : undefined;
  process.stdout.write(netlistOf(world, id, leads));
  return 0;
}
