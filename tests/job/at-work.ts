/** Attempts worked through from a short text: `walk BATT; open AC4; red G1.+; black G1.-; read`. */
import { readFileSync } from 'node:fs';
import { jobOf } from '../../src/cli/library.ts';
import type { MeterFunction } from '../../src/instruments/index.ts';
import {
  type Action,
  Attempt,
  type Record as Done,
  type Ending,
  isRefusal,
  type JobSpec,
} from '../../src/job/index.ts';
import { hobbinModel } from '../support/hobbin.ts';

export const JOB_IDS = Array.from({ length: 12 }, (_, i) => `job-${String(i + 1).padStart(2, '0')}`);

export const jobPath = (id: string): string => `scenarios/jobs/${id}.json`;

/** The job's file as JSON, fresh each time so that it can be changed in place. */
export const jobJson = (id: string): unknown => JSON.parse(readFileSync(jobPath(id), 'utf8'));

const jobs = new Map<string, JobSpec>();

export function theJob(id: string): JobSpec {
  const known = jobs.get(id);
  if (known !== undefined) return known;
  const { job } = jobOf(id);
  jobs.set(id, job);
  return job;
}

export const attemptAt = (id: string): Attempt => new Attempt(hobbinModel(), theJob(id));

const pointOrNone = (word: string): string | null => (word === '-' ? null : word);

function actionOf(line: string): Action {
  const [verb, first = '', second = '', third] = line.split(/\s+/);
  switch (verb) {
    case 'walk':
      return { do: 'walk', zone: first };
    case 'open':
    case 'close':
      return { do: verb, access: first };
    case 'with':
    case 'without':
      return { do: 'precaution', id: first, on: verb === 'with' };
    case 'helper':
      return { do: 'helper', call: first !== 'off' };
    case 'operate':
      return third === undefined
        ? { do: 'operate', control: first, value: second }
        : { do: 'operate', control: first, value: second, holdMs: Number(third) };
    case 'take':
      return { do: 'instrument', take: first === 'lamp' ? 'lamp' : 'meter' };
    case 'dial':
      return { do: 'dial', fn: first as MeterFunction };
    case 'jack':
      return { do: 'jack', red: first === 'amps' ? 'amps' : 'volts' };
    case 'range':
      return { do: 'range', to: first === 'auto' ? null : Number(first) };
    case 'zero':
    case 'minmax':
      return { do: verb, on: first === 'on' };
    case 'red':
    case 'black':
      return { do: 'lead', lead: verb, point: pointOrNone(first) };
    case 'exchange':
      return { do: 'exchange', part: first, with: second };
    case 'pull':
    case 'refit':
      return { do: verb, part: first };
    case 'unplug':
    case 'plug':
      return { do: verb, connector: first };
    case 'lift':
    case 'land':
      return { do: verb, end: first };
    case 'look':
    case 'wiggle':
      return { do: verb, at: first };
    case 'ask':
      return { do: 'ask', question: first };
    case 'repair':
      return { do: 'repair', verb: first, target: second };
    case 'writeUp':
      return { do: 'writeUp', complaint: '', cause: first, mode: second, correction: '' };
    case 'finish':
      return { do: 'finish', ending: first as Ending };
    case 'start':
    case 'read':
    case 'codes':
    case 'clearCodes':
    case 'verify':
      return { do: verb };
    default:
      throw new Error(`not an action: ${line}`);
  }
}

export const actionsOf = (text: string): Action[] =>
  text
    .split(';')
    .map((line) => line.trim())
    .filter((line) => line !== '')
    .map(actionOf);

/** Does one action that must not be refused. */
export function act(attempt: Attempt, action: Action): Done {
  const result = attempt.act(action);
  if (isRefusal(result)) throw new Error(`refused: ${JSON.stringify(action)}: ${result.code} ${result.what}`);
  return result;
}

/** Does every action of the text; gives the record of the last one. */
export function work(attempt: Attempt, text: string): Done {
  const records = actionsOf(text).map((action) => act(attempt, action));
  return records[records.length - 1];
}

/** Begun at a job, with everything done that the text says. */
export function workedAt(id: string, text = ''): Attempt {
  const attempt = attemptAt(id);
  work(attempt, `start; ${text}`);
  return attempt;
}

/** A job done along its own sound way. */
export function ownWay(id: string): Attempt {
  const attempt = attemptAt(id);
  for (const action of theJob(id).path) act(attempt, action);
  return attempt;
}

/** Why the action would be refused: `covered AC4`; empty when it would not. */
export function refusalOf(attempt: Attempt, text: string): string {
  const refusal = attempt.refusal(actionsOf(text)[0]);
  return refusal === null ? '' : `${refusal.code} ${refusal.what}`;
}
