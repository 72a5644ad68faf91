/** The sound way for comparison. It costs as much work as the grade, so it comes later and is kept for the job. */
import { useEffect, useState } from 'preact/hooks';
import type { Prior } from '../../diagnosis/index.ts';
import type { Grade } from '../../grading/index.ts';
import type { Session } from '../state/session.ts';
import { runWorker } from './grading.ts';
import type { SoundBill } from './sound-way.ts';

export interface SoundWay {
  bill: SoundBill | null;
  line: Grade['line'] | null;
  failed: boolean;
}

const NOTHING: SoundWay = { bill: null, line: null, failed: false };
const known = new Map<string, SoundWay>();

export function useSoundWay({ book, job }: Session, prior: Prior): SoundWay {
  const key = `${prior}:${job.id}`;
  const [way, setWay] = useState<SoundWay>(known.get(key) ?? NOTHING);
  useEffect(() => {
    const had = known.get(key);
    if (had !== undefined) return setWay(had);
    let now = NOTHING;
    const put = (change: Partial<SoundWay>): void => {
      now = { ...now, ...change };
      if (now.line !== null) known.set(key, now);
      setWay(now);
    };
    const fail = (): void => put({ failed: true });
    const worker = runWorker({ kind: 'sound', book, job, prior }, fail, (answer) => {
      if (answer.kind === 'bill') put({ bill: answer.bill });
      if (answer.kind === 'line') put({ line: answer.line });
      return answer.kind === 'line';
    });
    return () => worker.terminate();
  }, [key, book, job, prior]);
  return way;
}
