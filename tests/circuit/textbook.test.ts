import { describe, expect, it } from 'vitest';
import { solveNodes } from '../support/ngspice.ts';
import { numberOf, parseSketch, Sketch } from '../support/sketch.ts';
import { EXAMPLES } from './textbook.ts';

/** Half a unit of the last digit that the book prints, with a hair for binary fractions. */
function halfDigit(printed: string): number {
  const [digits, suffix] = /^(.*?)([a-zA-Z]?)$/.exec(printed)?.slice(1) ?? [printed, ''];
  const decimals = digits.split('.')[1]?.length ?? 0;
  return 0.5001 * 10 ** -decimals * numberOf(`1${suffix}`);
}

describe('textbook circuits come out as printed', () => {
  for (const { topic, source, circuit, printed } of EXAMPLES) {
    it(`${topic} (${source})`, () => {
      const sketch = new Sketch(circuit);
      for (const claim of printed.split(' ')) {
        const [quantity, answer] = claim.split('=');
        const off = Math.abs(sketch.quantity(quantity) - numberOf(answer));
        expect(off, `${claim}, solved ${sketch.quantity(quantity)}`).toBeLessThanOrEqual(halfDigit(answer));
      }
    });
  }
});

describe('textbook circuits in ngspice', () => {
  it('gives the same node volts within 1 µV and 20 millionths (the leaks, beside 250 Mohm)', async () => {
    for (const { topic, circuit } of EXAMPLES) {
      const sketch = new Sketch(circuit);
      const lines = parseSketch(circuit).flatMap((e) => {
        if (e.ohms === null) return [`${e.id} ${e.a} ${e.b} DC ${e.amps}`];
        if (e.volts === 0) return [`${e.id} ${e.a} ${e.b} ${e.ohms}`];
        return [`${e.id} ${e.a} in${e.id} DC ${e.volts}`, `R${e.id} in${e.id} ${e.b} ${e.ohms}`];
      });
      const nodes = await solveNodes(['* textbook', ...lines, '.op', '.end', ''].join('\n'));
      for (const [node, volts] of nodes) {
        if (node.startsWith('in')) continue;
        expect(Math.abs(sketch.volts(node) - volts), `${topic}: node ${node}`).toBeLessThan(
          1e-6 + 2e-5 * Math.abs(volts),
        );
      }
    }
  });
});
