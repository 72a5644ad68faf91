/** One sentence of the debrief as data: what was done, when, what it cost, and what would have been better. */
import type { Criterion } from './rubric.ts';

export type FindingCode =
  // Lost points
  | 'precaution-missing'
  | 'critical-missing'
  | 'told-nothing'
  | 'asked-twice'
  | 'no-tests'
  | 'ohms-live'
  | 'jack-fuse'
  | 'repair-unproved'
  | 'repair-lucky'
  | 'repair-needless'
  | 'fuse-again'
  | 'not-mended'
  | 'wrong-ending'
  | 'over-par'
  | 'not-timed'
  | 'not-verified'
  | 'interlocks-not-tried'
  | 'left-open'
  | 'cause-wrong'
  | 'no-write-up'
  // What was right
  | 'halved'
  | 'proved'
  | 'safe'
  | 'verified'
  | 'cause-right'
  | 'within-par';

export interface Finding {
  code: FindingCode;
  criterion: Criterion;
  /** Index of the log entry; null for the attempt as a whole. */
  entry: number | null;
  timeMs: number;
  /** Points lost; 0 for what was right. */
  lost: number;
  /** Parameters of the sentence: ids of the book and numbers. */
  params: Record<string, string | number>;
}
