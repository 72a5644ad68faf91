/** The graded part of the debrief: what was right, the result, where points went, the charts and the bill. */
import type { Grade } from '../../grading/index.ts';
import type { Session } from '../state/session.ts';
import { Bill } from './bill.tsx';
import { Findings, Good } from './findings.tsx';
import { Line } from './line.tsx';
import { Marks } from './marks.tsx';
import { Stairs } from './stairs.tsx';
import { useSoundWay } from './use-sound-way.ts';

export function Debrief({ session, grade }: { session: Session; grade: Grade }) {
  const way = useSoundWay(session, grade.prior);
  return (
    <>
      <div class="review-top">
        <Good session={session} findings={grade.good} />
        <Marks grade={grade} />
      </div>
      <Findings session={session} findings={grade.findings} />
      <div class="review-charts">
        <div class="review-side">
          <Line session={session} grade={grade} way={way} />
          <Bill session={session} grade={grade} sound={way.bill} />
        </div>
        <Stairs session={session} staircases={grade.staircases} />
      </div>
    </>
  );
}
