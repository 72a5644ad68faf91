/** The grade of an attempt: kept from before, or worked out in a worker. */
import { useEffect, useState } from 'preact/hooks';
import type { Grade } from '../../grading/index.ts';
import { ENGINE_VERSION } from '../../job/index.ts';
import { keepGrade, keptGrade } from '../../storage/grades.ts';
import { Observable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import type { GradeAnswer, GradeOrder, Stage } from './grade-worker.ts';

export type Grading = { state: 'working' } | { state: 'failed' } | { state: 'done'; grade: Grade };

const running = new Map<string, Promise<Grade>>();

/** Where the worker is with the log that is being graded. */
export const stage = new Observable<Stage>('replay');

/** The last entry's hash stands for the whole log; with the engine's version it says whether a kept grade still holds. */
function keyOf(session: Session): string {
  return `${ENGINE_VERSION}:${session.attempt.log.entries.at(-1)?.hash ?? ''}`;
}

function gradeOf(session: Session): Promise<Grade> {
  const key = keyOf(session);
  const known = running.get(key);
  if (known !== undefined) return known;
  const work = keptGrade(key).then((kept) => kept ?? workOut(session, key));
  running.set(key, work);
  work.then(({ result, total }) => session.keepResult({ result, points: total })).catch(() => undefined);
  work.catch(() => running.delete(key));
  return work;
}

function workOut({ book, job, attempt }: Session, key: string): Promise<Grade> {
  stage.set('replay');
  return new Promise((resolve, reject) => {
    const order: GradeOrder = { kind: 'grade', book, job, log: attempt.log };
    runWorker(order, reject, (answer) => {
      if (answer.kind === 'stage') stage.set(answer.stage);
      if (answer.kind !== 'grade') return false;
      void keepGrade(key, answer.grade);
      resolve(answer.grade);
      return true;
    });
  });
}

/** Sends an order to a worker of its own and hands on what it says, until `hear` has heard enough. */
export function runWorker(
  order: GradeOrder,
  fail: (error: Error) => void,
  hear: (answer: GradeAnswer) => boolean,
): Worker {
  const worker = new Worker(new URL('./grade-worker.ts', import.meta.url), { type: 'module' });
  worker.addEventListener('message', (event: MessageEvent<GradeAnswer>) => {
    if (hear(event.data)) worker.terminate();
  });
  worker.addEventListener('error', (event) => {
    worker.terminate();
    fail(new Error(event.message));
  });
  worker.postMessage(order);
  return worker;
}

export function useGrade(session: Session): { grading: Grading; retry: () => void } {
  const [grading, setGrading] = useState<Grading>({ state: 'working' });
  const [tries, setTries] = useState(0);
  // A new try is a new effect.
  useEffect(() => {
    let gone = false;
    setGrading({ state: 'working' });
    gradeOf(session)
      .then((grade) => {
        if (!gone) setGrading({ state: 'done', grade });
      })
      .catch(() => {
        if (!gone) setGrading({ state: 'failed' });
      });
    return () => {
      gone = true;
    };
  }, [session, tries]);
  return { grading, retry: () => setTries(tries + 1) };
}
