/** The result: marks by criterion, what was right, where points went, the falling line and the voltage staircase. */
import { CRITERIA, type Finding, type Grade } from '../../grading/index.ts';
import type { Session } from '../state/session.ts';
import { t } from '../words/words.ts';
import { findingText } from './finding-text.ts';
import { Findings } from './findings.tsx';
import { Line } from './line.tsx';
import { Stairs } from './stairs.tsx';

export interface DebriefProps {
  session: Session;
  grade: Grade;
}

export function Debrief({ session, grade }: DebriefProps) {
  return (
    <>
      <Marks grade={grade} />
      <Good session={session} good={grade.good} />
      <Findings session={session} findings={grade.findings} />
      <div class="charts">
        <Line grade={grade} />
        {grade.staircases.slice(0, 1).map((staircase) => (
          <Stairs key={staircase.id} session={session} staircase={staircase} />
        ))}
      </div>
    </>
  );
}

function Marks({ grade }: { grade: Grade }) {
  return (
    <section class="marks" aria-labelledby="debrief-marks">
      <h2 id="debrief-marks" class={`verdict verdict-${grade.result}`}>
        {t(`debrief.${grade.result}`)} <span>{t('debrief.total', { points: grade.total })}</span>
      </h2>
      {grade.critical ? <p class="warn">{t('debrief.failWhy')}</p> : null}
      <table class="criteria">
        <caption class="unseen">{t('debrief.criteria')}</caption>
        <tbody>
          {CRITERIA.map((criterion) => {
            const { points, of } = grade.criteria[criterion];
            return (
              <tr key={criterion}>
                <th scope="row">{t(`debrief.${criterion}`)}</th>
                <td>
                  <meter min={0} max={of} value={points} aria-label={t(`debrief.${criterion}`)} />
                </td>
                <td class="points-cell">{t('debrief.points', { points, of })}</td>
              </tr>
            );
          })}
        </tbody>
      </table>
    </section>
  );
}

function Good({ session, good }: { session: Session; good: Finding[] }) {
  if (good.length === 0) return null;
  return (
    <section aria-labelledby="debrief-good">
      <h2 id="debrief-good">{t('debrief.good')}</h2>
      <ul class="good">
        {good.map((finding) => (
          <li key={`${finding.code}${finding.entry}`}>{findingText(session, finding)}</li>
        ))}
      </ul>
    </section>
  );
}
