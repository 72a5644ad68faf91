/** Works out the grade beside the page, since that tries everything that could have been wrong. */
import { gradeOf } from '../../grading/index.ts';
import { type JobSpec, type Log, replay } from '../../job/index.ts';
import { type Book, buildModel } from '../../machine/index.ts';

export interface GradeOrder {
  book: Book;
  job: JobSpec;
  log: Log;
}

addEventListener('message', (event: MessageEvent<GradeOrder>) => {
  const { book, job, log } = event.data;
  postMessage(gradeOf(replay(buildModel(book), job, log).attempt));
});
