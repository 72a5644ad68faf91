/** Weights and bands of the grade: published defaults, our own judgement. Data, so that an instructor can set others. */

export type Criterion = 'safety' | 'order' | 'proof' | 'parts' | 'time' | 'closeOut';

export interface Rubric {
  /** Points by criterion; they add up to 100. */
  weights: Record<Criterion, number>;
  passMark: number;
  /** Share of the safety points lost by each precaution that was missed. */
  lapseShare: number;
  /** Probability from which a repair counts as proved, and steps below it: [from, share of the points]. */
  proof: [from: number, share: number][];
  /** Probability from which a repair is justified; a cheap one (a fuse, an adjustment) needs less. */
  justified: { usual: number; cheap: number; cheapMinutes: number; cheapPrice: number };
  /** Share of the parts points lost by each repair without evidence. */
  needlessShare: number;
  /** Bill against the sound way's: full points up to `full` times, none from `none` times. */
  time: { full: number; none: number };
  closeOut: { verified: number; interlocks: number; closed: number; writeUp: number };
  /** An outcome that this share of the suspects foretold could teach nothing. */
  foreseen: number;
}

export const DEFAULT_RUBRIC: Rubric = {
  weights: { proof: 30, order: 20, safety: 20, parts: 15, closeOut: 10, time: 5 },
  passMark: 70,
  lapseShare: 0.25,
  proof: [
    [0.85, 1],
    [0.6, 0.75],
    [0.35, 0.45],
    [0.15, 0.2],
  ],
  justified: { usual: 0.5, cheap: 0.25, cheapMinutes: 5, cheapPrice: 5 },
  needlessShare: 0.4,
  time: { full: 1.5, none: 4 },
  closeOut: { verified: 0.4, interlocks: 0.1, closed: 0.2, writeUp: 0.3 },
  foreseen: 0.99,
};

export const CRITERIA: readonly Criterion[] = ['safety', 'order', 'proof', 'parts', 'time', 'closeOut'];
