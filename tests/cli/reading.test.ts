/** `reading` and `netlist`: one settled state of a job's machine, read and written out. */
import { describe, expect, test } from 'vitest';
import { fileWith, ohmyard } from './ohmyard.ts';

const read = (...args: string[]) => ohmyard('reading', 'job-05', ...args);

describe('reading', () => {
  test('--json gives value, unit and display', () => {
    const ran = read('--red', 'G1.+', '--black', 'G1.-', '--json');
    expect([ran.status, ran.err]).toEqual([0, '']);
    const shown = JSON.parse(ran.out);
    expect(shown).toEqual({ value: expect.any(Number), unit: 'V', display: expect.stringMatching(/^12\.\d\d$/) });
    expect(Math.abs(shown.value - Number(shown.display))).toBeLessThan(0.011);
  });

  test('without it the display and its unit', () => {
    expect(read('--red', 'G1.+', '--black', 'G1.-').out).toMatch(/^12\.\d\d V\n$/);
  });

  test('null for overload', () => {
    const shown = JSON.parse(
      read('--set', 'iso=0', '--unplug', 'X1', '--meter', 'ohms', '--red', 'X1.2.a', '--black', 'X1.2.b', '--json').out,
    );
    expect(shown).toMatchObject({ value: null, display: 'OL' });
  });

  test('controls are set one after the other, and the last one is held', () => {
    const k1 = ['--red', 'K1.86', '--black', 'GND2.L', '--json'];
    const volts = (...args: string[]) => JSON.parse(read(...k1, ...args).out).value;
    expect(Math.abs(volts('--set', 'key=start'))).toBeLessThan(0.1);
    expect(volts('--set', 'key=start', '--healthy')).toBeGreaterThan(9);
    expect(Math.abs(volts('--set', 'key=start', '--healthy', '--pull', 'F10'))).toBeLessThan(0.1);
    expect(Math.abs(volts('--set', 'lever=F', '--set', 'key=start', '--healthy'))).toBeLessThan(0.1);
  });

  test('a load that the instrument is lies in the circuit: low impedance and amperes', () => {
    const shown = (...args: string[]) => JSON.parse(read('--json', ...args).out);
    const post = ['--red', 'G1.+', '--black', 'G1.-'];
    expect(shown('--meter', 'volts-lo', ...post)).toMatchObject({ unit: 'V', display: expect.stringMatching(/^12\./) });
    expect(shown('--meter', 'diode', ...post)).toMatchObject({ value: null, display: 'OL' });
    // The beacon's fuse is out, and the meter stands in for it.
    const beacon = ['--set', 'key=run', '--set', 'beacon=1', '--pull', 'F26', '--red', 'F26.a', '--black', 'F26.b'];
    expect(Math.abs(shown('--meter', 'amps', ...beacon).value)).toBeGreaterThan(1);
    expect(read('--meter', 'farads', ...post).status).not.toBe(0);
  });

  test('a range and the resistance of the leads as they are asked for; without it the leads are none', () => {
    const shown = (...args: string[]) => JSON.parse(read('--json', ...args).out);
    expect(shown('--range', '6 V', '--red', 'G1.+', '--black', 'G1.-')).toMatchObject({ value: null, display: 'OL' });
    expect(read('--range', '7 V', '--red', 'G1.+', '--black', 'G1.-').status).not.toBe(0);
    const short = ['--set', 'iso=0', '--meter', 'ohms', '--red', 'G1.+', '--black', 'G1.+'];
    expect(shown(...short).value).toBe(0);
    expect(shown('--lead-ohms', '0.3', ...short)).toEqual({ value: 0.3, unit: 'Ω', display: '0.3' });
  });

  test('--pairs gives one line a pair', () => {
    const pairs = fileWith('pairs.txt', 'G1.+ G1.-\nG1.- G1.+\n');
    const lines = read('--pairs', pairs, '--json').out.trim().split('\n');
    const [one, other] = lines.map((line) => JSON.parse(line).value);
    expect(lines).toHaveLength(2);
    expect(one).toBeCloseTo(-other, 12);
  });
});

describe('netlist', () => {
  const { status, out } = ohmyard('netlist', 'job-05', '--set', 'key=start', '--leads', 'X1.2.a', 'GND3.L');

  test('names the node of each point in a comment', () => {
    expect(status).toBe(0);
    expect(out).toMatch(/^\* point X7\.3\.a = n\d+$/m);
    expect(out).toMatch(/^\* point G1\.- = 0$/m);
    const names = [...out.matchAll(/^\* point (\S+) = (n\d+|0)$/gm)].map((m) => m[1]);
    expect(new Set(names).size).toBe(names.length);
    expect(names.length).toBeGreaterThan(700);
  });

  test('uses no node that is not named, and ends as SPICE text does', () => {
    const named = new Set([...out.matchAll(/^\* point \S+ = (\S+)$/gm)].map((m) => m[1]));
    const used = [...out.matchAll(/^[RI]\S+ (\S+) (\S+) /gm)].flatMap((m) => [m[1], m[2]]);
    expect(used.filter((node) => !named.has(node))).toEqual([]);
    expect(out.trimEnd().split('\n').slice(-2)).toEqual(['.op', '.end']);
  });

  test('puts the meter into the network, and the leaks', () => {
    expect(out).toMatch(/^RMETER n\d+ n\d+ 10000000 ; meter$/m);
    expect(out).toMatch(/^RL0 n0 0 1000000000000$/m);
  });
});
