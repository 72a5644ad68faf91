/** Reference values, section 2: fuses. The boxes that all sizes share are in `tests/machine/fuses.test.ts`. */
import { describe } from 'vitest';
import { World } from '../../src/machine/index.ts';
import { benchModel, benchSupply, joint, partOf } from '../support/bench-book.ts';
import { drive } from '../support/drive.ts';
import { momentOf, watch } from '../support/edges.ts';
import { hobbinBook, hobbinModel } from '../support/hobbin.ts';
import { row, type Status, within } from '../support/row.ts';
import { STATES } from '../support/states.ts';

const SUPPLY_VOLTS = 12;
const fuses = hobbinBook().parts.flatMap((part) => (part.kind === 'fuse' ? [part] : []));
const blades = fuses.filter((fuse) => fuse.type === 'blade');
/** The first of each rating: all of a rating have the same numbers (tests/machine/fuses.test.ts tries every one). */
function bladeOf(amps: number): string {
  const fuse = blades.find((one) => one.ratingAmps === amps);
  if (fuse === undefined) throw new Error(`the book has no blade fuse of ${amps} A`);
  return fuse.id;
}

function carrying(id: string, amps: number): World {
  const joints = [joint('plus', 'PS.+', `${id}.a`), joint('minus', 'PS.-', `${id}.b`)];
  const world = new World(benchModel([benchSupply(SUPPLY_VOLTS), partOf(id)], joints));
  world.setQuantity('knob', SUPPLY_VOLTS / amps - (0.002 + 2e-6 + coldOhms(id)));
  world.settle();
  return world;
}

/** Seconds until it opens at these amperes; infinity where it lasts for half an hour and more. */
function opensAfter(id: string, amps: number): number {
  const ms = momentOf(watch(carrying(id, amps), 2_000_000, [id]), id, 'blown');
  return ms === null ? Number.POSITIVE_INFINITY : ms / 1000;
}

/** Rating, multiple of it, box in seconds. */
type Box = [amps: number, multiple: number, least: number, most: number, status: Status, source: string];
const ATOF = 'ATOF 287 datasheet quoted in FUSE-R2';
const ISO_BLADE = 'ISO 8820-3 blade';
const BOXES: Box[] = [
  [5, 2, 0.15, 5, 'C2', ATOF],
  [7.5, 2, 0, 5, 'C2', 'FUSE-R4, greatest time at 15 A'],
  [7.5, 1.6, 0, 50, 'C2', 'FUSE-R4, greatest time at 12 A'],
  [7.5, 1.35, 0, 600, 'C2', 'FUSE-R4, greatest time at 10.125 A'],
  [10, 1.6, 0.25, 50, 'C2', 'ATOF 10 A, FUSE-R3'],
  [10, 2, 0.15, 5, 'C2', 'ATOF 10 A, FUSE-R3'],
  [15, 1.35, 0.75, 600, 'C2', ATOF],
  [15, 2, 0.15, 5, 'C2', ATOF],
  [15, 6, 0.02, 0.1, 'M', ISO_BLADE],
  [25, 1.35, 0.75, 600, 'C2', ATOF],
  [25, 2, 0.15, 5, 'C2', ATOF],
  [25, 3.5, 0.04, 0.5, 'M', ISO_BLADE],
];

describe('2.1 opening time of blade fuses', () => {
  for (const [amps, multiple, least, most, status, source] of BOXES) {
    const id = bladeOf(amps);
    row(status, source, `${amps} A at ${multiple} times: ${least} to ${most} s`, () => {
      // A hair above the edge of the box, so that a curve which begins there has begun.
      within(opensAfter(id, amps * multiple * 1.001), { least, most });
    });
  }
});

/** Cold ohms of a fuse of the book. */
function coldOhms(id: string): number {
  const part = partOf(id);
  return part.kind === 'fuse' ? part.ohms : Number.NaN;
}

/** Rating, mohm, status, A²s, status. */
const COLD: [amps: number, mohm: number, status: Status, i2t: number, status: Status][] = [
  [5, 17.85, 'M', 26, 'C2'],
  [7.5, 10.9, 'M', 60, 'M'],
  [10, 7.7, 'M', 115, 'M'],
  [15, 4.8, 'M', 340, 'M'],
  [25, 2.52, 'C2', 1000, 'C2'],
];

describe.each(COLD)('2.2 blade of %d A', (amps, mohm, status, i2t, i2tStatus) => {
  const id = bladeOf(amps);

  row(status, 'ATO datasheets', `cold ${mohm} mohm, within 5 %`, () => {
    const world = carrying(id, amps / 10);
    const drop = world.voltsBetween(`${id}.a`, `${id}.b`) / world.ampsIn(`${id}.link`);
    within((drop * 1000) / mohm, { least: 0.95, most: 1.05 });
  });

  row('D', 'power law through the two confirmed points, 2.52 (In/25)^-1.19', 'lies on it within 6 %', () => {
    within((coldOhms(id) / 2.52e-3) * (amps / 25) ** 1.19, { least: 0.94, most: 1.06 });
  });

  row(i2tStatus, 'ATO datasheets, melting energy', `about ${i2t} A²s on a dead short`, () => {
    const short = amps * 20;
    const energy = short * short * opensAfter(id, short);
    within(energy / i2t, { least: 0.6, most: 1.7 });
  });
});

describe('2.2, 2.3 what a fuse box shows', () => {
  row('C', 'FUSE-CHART1, 15 A mini: 1.0 mV for 218 mA', '15 A blade: the drop tells the current within 10 %', () => {
    const world = carrying(bladeOf(15), 2.18);
    const id = bladeOf(15);
    within(world.voltsBetween(`${id}.a`, `${id}.b`) / 0.01, { least: 0.9, most: 1.1 });
  });

  row('D', 'section 13 no. 5', '10 A blade carrying 8 A: 62 mV cold', () => {
    const id = bladeOf(10);
    within(carrying(id, 8).voltsBetween(`${id}.a`, `${id}.b`), { least: 0.0615, most: 0.0625 });
  });

  row('C2', 'FUSE-SIZE; colour code of ISO 8820-3 (M)', 'blades have a rating that is made, 3 to 40 A', () => {
    const made = [3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40];
    for (const fuse of blades) within(made.indexOf(fuse.ratingAmps), { least: 0 }, fuse.id);
  });

  row('C', 'KUP-12, fuses', 'every fuse stands in the hot conductor', () => {
    const world = drive({ model: hobbinModel(), settings: STATES.lights });
    let loaded = 0;
    for (const fuse of fuses) {
      if (Math.abs(world.ampsIn(`${fuse.id}.link`)) < 0.1) continue;
      loaded++;
      within(world.voltsBetween(`${fuse.id}.b`, 'G1.-'), { least: 10 }, fuse.id);
    }
    within(loaded, { least: 8 });
  });
});
