/** The test lamp loads what it is put on: that is what it is for. */
import { describe, expect, it } from 'vitest';
import { LAMP_OHMS, lampLoad, readLamp, readMeter } from '../../src/instruments/index.ts';
import { drive } from '../support/drive.ts';
import { hobbinModel } from '../support/hobbin.ts';
import { patchChanges } from '../support/patch.ts';
import { STATES } from '../support/states.ts';

const model = hobbinModel();

function lamp(patch: string, state: string, tip: string, clip: string): { glow: string; meter: string } {
  const sound = drive({ model, settings: STATES[state], changes: patchChanges(patch) });
  const meter = readMeter(sound, 'volts-dc', tip, clip).text;
  const world = drive({ model, settings: STATES[state], changes: [...patchChanges(patch), ...lampLoad(tip, clip)] });
  return { glow: readLamp(world, tip, clip), meter };
}

describe('test lamp', () => {
  it('is bright on the battery and on a sound feed, dark across a sound ground', () => {
    expect(lamp('set canok 1', 'run', 'G1.+', 'G1.-').glow).toBe('bright');
    expect(lamp('set canok 1', 'run', 'F1.b', 'GND3.L').glow).toBe('bright');
    expect(lamp('set canok 1', 'run', 'GND3.L', 'G1.-').glow).toBe('dark');
  });

  it('draws about 0.4 A of 12 V (tools of the book: 5 W)', () => {
    expect(12 / LAMP_OHMS).toBeGreaterThan(0.35);
    expect(12 / LAMP_OHMS).toBeLessThan(0.45);
  });

  it('shows what a meter does not: a feed through 60 ohm of corrosion reads full volts and cannot light it', () => {
    const { glow, meter } = lamp('res W:110A 60', 'off', 'S2.30', 'GND4.L');
    expect(Number(meter)).toBeGreaterThan(12.5);
    expect(glow).toBe('glimmer');
  });

  it('on an open wire with 1 Mohm of leakage the meter reads 11.5 V and the lamp stays dark (ghost volts, arithmetic)', () => {
    const { glow, meter } = lamp('open W:110A; short S2.30 G1.+ 1000000', 'off', 'S2.30', 'GND4.L');
    expect(meter).toBe('11.50');
    expect(glow).toBe('dark');
  });
});
