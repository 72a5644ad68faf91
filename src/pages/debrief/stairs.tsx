/** The voltage staircase: node by node along the current's path, this machine beside a sound one. */
import type { Staircase } from '../../grading/index.ts';
import type { Session } from '../state/session.ts';
import { pointName } from '../words/names.ts';
import { t } from '../words/words.ts';

const ROW = 26;
const [LEFT, RIGHT, TOP] = [250, 56, 30];
const W = 620;
/** Volts of the whole width. */
const FULL = 14;

export function Stairs({ session, staircase }: { session: Session; staircase: Staircase }) {
  const { model } = session;
  const { stairs } = staircase;
  const x = (volts: number): number => LEFT + (Math.max(0, Math.min(volts, FULL)) / FULL) * (W - LEFT - RIGHT);
  const line = (of: 'here' | 'sound'): string =>
    stairs.map((s, i) => `${i === 0 ? 'M' : 'L'}${x(s[of])} ${TOP + i * ROW}V${TOP + (i + 1) * ROW}`).join('');
  const black = session.book.reference;
  return (
    <figure class="chart">
      <figcaption>
        <b>
          {t('debrief.stairsTitle')}: {staircase.title}.
        </b>{' '}
        {t('debrief.stairsText', { black: pointName(model, black) })}
      </figcaption>
      <svg
        viewBox={`0 0 ${W} ${TOP + stairs.length * ROW + 8}`}
        role="img"
        aria-label={`${t('debrief.stairsTitle')}: ${staircase.title}`}
      >
        {[0, 4, 8, 12].map((volts) => (
          <g key={volts}>
            <path class="grid" d={`M${x(volts)} ${TOP}v${stairs.length * ROW}`} />
            <text x={x(volts)} y={TOP - 10} text-anchor="middle">
              {`${volts} V`}
            </text>
          </g>
        ))}
        {stairs.map((s, i) => (
          <g key={s.point}>
            <text x={LEFT - 12} y={TOP + i * ROW + 18} text-anchor="end">
              {shortPoint(model, s.point)}
            </text>
            <text x={W - RIGHT + 6} y={TOP + i * ROW + 18} class={Math.abs(s.here - s.sound) > 0.5 ? 'off' : ''}>
              {s.here.toFixed(2)}
            </text>
          </g>
        ))}
        <path class="sound-line" d={line('sound')} />
        <path class="here-line" d={line('here')} />
      </svg>
      <p class="legend">
        <span class="key-here">{t('debrief.stairsHere')}</span>{' '}
        <span class="key-sound">{t('debrief.stairsSound')}</span>
      </p>
      <details>
        <summary>{t('debrief.asTable')}</summary>
        <table>
          <thead>
            <tr>
              <th scope="col">{t('debrief.stairsPoint')}</th>
              <th scope="col">{t('debrief.stairsHere')}</th>
              <th scope="col">{t('debrief.stairsSound')}</th>
            </tr>
          </thead>
          <tbody>
            {stairs.map((s) => (
              <tr key={s.point}>
                <th scope="row">{pointName(model, s.point)}</th>
                <td>{`${s.here.toFixed(2)} V`}</td>
                <td>{`${s.sound.toFixed(2)} V`}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </figure>
  );
}

/** Without the wire where the line is too short for it. */
const shortPoint = (model: Session['model'], point: string): string => {
  const name = pointName(model, point);
  return name.length > 36 ? name.slice(0, name.indexOf(',')) : name;
};
