/** Suspects left after each test, as a falling line against shop minutes. */
import type { Grade } from '../../grading/index.ts';
import { minutes } from '../state/settings.ts';
import { t } from '../words/words.ts';

/** Drawing units of the chart. */
const [W, H] = [620, 260];
const EDGE = { left: 46, right: 16, top: 14, bottom: 40 };

export function Line({ grade }: { grade: Grade }) {
  const { line } = grade;
  if (line.length < 2) return null;
  const most = Math.max(...line.map(([, , left]) => left), 1);
  const end = Math.max(...line.map(([, tenths]) => tenths), 1);
  const x = (tenths: number): number => EDGE.left + (tenths / end) * (W - EDGE.left - EDGE.right);
  const y = (left: number): number => H - EDGE.bottom - (left / most) * (H - EDGE.top - EDGE.bottom);
  const path = line
    .map(([, tenths, left], i) => (i === 0 ? `M${x(tenths)} ${y(left)}` : `H${x(tenths)}V${y(left)}`))
    .join('');
  const text = t('debrief.lineText', { first: line[0][2], last: line[line.length - 1][2] });
  return (
    <figure class="chart">
      <figcaption>
        <b>{t('debrief.lineTitle')}.</b> {text}
      </figcaption>
      <svg viewBox={`0 0 ${W} ${H}`} role="img" aria-label={`${t('debrief.lineTitle')}. ${text}`}>
        <path class="axis" d={`M${EDGE.left} ${EDGE.top}V${H - EDGE.bottom}H${W - EDGE.right}`} />
        {[0, 0.5, 1].map((share) => (
          <text key={share} x={EDGE.left - 8} y={y(most * share) + 5} text-anchor="end">
            {Math.round(most * share)}
          </text>
        ))}
        {[0, 0.5, 1].map((share) => (
          <text key={share} x={x(end * share)} y={H - EDGE.bottom + 20} text-anchor="middle">
            {minutes(Math.round(end * share))}
          </text>
        ))}
        <text x={(W + EDGE.left) / 2} y={H - 4} text-anchor="middle">
          {t('debrief.lineX')}
        </text>
        <path class="fall" d={path} />
        {line.map(([entry, tenths, left]) => (
          <circle key={entry} class="fall-dot" cx={x(tenths)} cy={y(left)} r="4.5" />
        ))}
      </svg>
      <details>
        <summary>{t('debrief.asTable')}</summary>
        <ul>
          {line.map(([entry, tenths, left]) => (
            <li key={entry}>{t('debrief.lineRow', { minute: minutes(tenths), left })}</li>
          ))}
        </ul>
      </details>
    </figure>
  );
}
