/** Works out the grade beside the page, since that tries everything that could have been wrong. */
import { beliefOver, type Prior } from '../../diagnosis/index.ts';
import { type Grade, gradeOf, soundWay, suspectsLine } from '../../grading/index.ts';
import { type JobSpec, type Log, replay } from '../../job/index.ts';
import { type Book, buildModel } from '../../machine/index.ts';
import { billOfWay, type SoundBill } from './sound-way.ts';

/** The page hands over the book that it has read, so that the worker does not carry a second one. */
export type GradeOrder =
  | { kind: 'grade'; book: Book; job: JobSpec; log: Log }
  | { kind: 'sound'; book: Book; job: JobSpec; prior: Prior };

/** How far it is; sent when a stage begins. */
export type Stage = 'replay' | 'weigh';

export type GradeAnswer =
  | { kind: 'stage'; stage: Stage }
  | { kind: 'grade'; grade: Grade }
  | { kind: 'bill'; bill: SoundBill }
  | { kind: 'line'; line: Grade['line'] };

const answer = (message: GradeAnswer): void => postMessage(message);

addEventListener('message', ({ data }: MessageEvent<GradeOrder>) => {
  const model = buildModel(data.book);
  if (data.kind === 'grade') {
    answer({ kind: 'stage', stage: 'replay' });
    const { attempt } = replay(model, data.job, data.log);
    answer({ kind: 'stage', stage: 'weigh' });
    answer({ kind: 'grade', grade: gradeOf(attempt) });
    return;
  }
  const way = soundWay(model, data.job);
  answer({ kind: 'bill', bill: billOfWay(way) });
  answer({ kind: 'line', line: suspectsLine(way, beliefOver(way, data.prior)) });
});
