/** A job as data: what the student is told, what is wrong, and what the complaint really is. No reading stands here. */
import type { Fault } from '../parts/index.ts';
import type { Action, Ending } from './action.ts';

/** Controls as set, in order, and what must then be noticed or missing: codes of the book's observables. */
export interface Symptom {
  controls: [control: string, value: string][];
  seen: string[];
  missing: string[];
}

/** What look, touch, smell or wiggling shows of a fault, and where one must be for it. */
export interface Sign {
  /** Part, connector or wire end that is looked at. */
  at: string;
  zone: string;
  by: 'look' | 'wiggle';
  /** A connector that must be parted, or a part that must be out, before it shows. */
  parted?: string;
  /** An access step that must be open. */
  under?: string;
  /** Shown only while a fault of this target is still there. */
  of?: string;
  text: string;
}

export interface JobSpec {
  id: string;
  machine: string;
  /** What the student sees; never names the fault. */
  title: string;
  band: 1 | 2 | 3 | 4;
  workOrder: { hours: number; history: string; operatorSays: string; onArrival: string };
  asks: { id: string; question: string; answer: string }[];
  arrival: {
    controls?: Record<string, string>;
    quantities?: Record<string, number>;
    regions?: Record<string, string>;
  };
  faults: Fault[];
  signs: Sign[];
  complaint: Symptom[];
  /** Right endings, and for a repair the targets and modes that state the cause truly. */
  ending: Ending;
  causes: { at: string; mode: string }[];
  /** The swap that is usually made for nothing. */
  wrongSwap: string;
  /** One sound and safe way through; its minutes and price are the par for time and cost. */
  path: Action[];
  /** How this fault behaves and how to prove it next time. */
  lesson: string;
}
