/** Which step of a staircase the debrief points at, and which staircase it opens with. */
import { describe, expect, it } from 'vitest';
import { jobOf, ourJobs } from '../../src/cli/library.ts';
import type { Stair } from '../../src/grading/index.ts';
import { staircasesOf } from '../../src/grading/staircase.ts';
import { mostTelling, parting } from '../../src/pages/debrief/staircase-choice.ts';

const stairs = (...volts: [here: number, sound: number][]): Stair[] =>
  volts.map(([here, sound], i) => ({ point: `P${i}`, here, sound }));

describe('the step at which the two machines part', () => {
  it('is where one loses what the other does not, not where both stand far apart', () => {
    expect(parting(stairs([12.6, 10.5], [12.6, 10.4], [0.1, 10.4], [0, 0]))).toBe(2);
  });

  it('is the supply itself where that stands low: what it feeds loses less because of it', () => {
    expect(parting(stairs([2.7, 10.5], [2.4, 10.1], [0.2, 0.2], [0, 0]))).toBe(0);
  });

  it('is not the supply where that only stands higher because nothing draws', () => {
    expect(parting(stairs([12.6, 10.5], [0, 10.4], [0, 0.2], [0, 0]))).toBe(1);
  });

  it('counts a loss that is missing as well', () => {
    expect(parting(stairs([12, 12], [11.9, 2], [11.9, 1.9]))).toBe(1);
  });
});

describe('the staircase to open with', () => {
  it.each([
    ['job-05', 'request'],
    ['job-11', 'power'],
  ])('lies on the path of the cause (%s: %s)', (name, expected) => {
    const { model, job } = jobOf(name);
    expect(mostTelling({ model, job }, staircasesOf(model, job))).toBe(expected);
  });

  it('is one of the book for each of our jobs', () => {
    for (const file of ourJobs()) {
      const { model, job } = jobOf(file);
      const ids = model.book.staircases.map((s) => s.id);
      expect(ids, file).toContain(mostTelling({ model, job }, staircasesOf(model, job)));
    }
  });
});
