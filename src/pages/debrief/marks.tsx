/** The result: pass or not, the safety gate by itself, and the points of each criterion. */
import { CRITERIA, type CriterionGrade, type Grade } from '../../grading/index.ts';
import { t } from '../words/words.ts';

export function Marks({ grade }: { grade: Grade }) {
  return (
    <section class="marks" aria-labelledby="debrief-marks">
      <h2 id="debrief-marks" class={`verdict verdict-${grade.result}`}>
        {t(`debrief.${grade.result}`)} <span>{t('debrief.total', { points: grade.total })}</span>
      </h2>
      <p class={grade.critical ? 'warn' : 'all-clear'}>{t(grade.critical ? 'review.gateFailed' : 'review.gateHeld')}</p>
      {grade.solved ? null : <p class="warn">{t('review.unsolved')}</p>}
      <table class="marks-table">
        <caption class="unseen">{t('debrief.criteria')}</caption>
        <thead>
          <tr>
            <th scope="col">{t('review.criterion')}</th>
            <th scope="col" colSpan={2}>
              {t('review.points')}
            </th>
          </tr>
        </thead>
        <tbody>
          {CRITERIA.map((criterion) => (
            <tr key={criterion} data-criterion={criterion}>
              <th scope="row">{t(`review.criteria.${criterion}`)}</th>
              <td class="bar-cell">
                <Bar mark={grade.criteria[criterion]} />
              </td>
              <td class="points-cell">{t('debrief.points', { ...grade.criteria[criterion] })}</td>
            </tr>
          ))}
        </tbody>
        <tfoot>
          <tr data-criterion="total">
            <th scope="row">{t('review.total')}</th>
            <td class="bar-cell">
              <Bar mark={{ points: grade.total, of: 100 }} />
            </td>
            <td class="points-cell">{t('debrief.points', { points: grade.total, of: 100 })}</td>
          </tr>
        </tfoot>
      </table>
    </section>
  );
}

/** Drawn, not a background, so that it prints. The figure stands beside it. */
function Bar({ mark: { points, of } }: { mark: CriterionGrade }) {
  return (
    <svg class="bar" width="100%" height="16" aria-hidden="true">
      <rect class="bar-full" x="0" y="2" width={`${of > 0 ? (100 * points) / of : 0}%`} height="12" />
      <rect class="bar-frame" x="0" y="2" width="100%" height="12" />
    </svg>
  );
}
