/** Suspects left after each test, as a falling line against shop minutes, beside the line of the sound way. */
import { useMemo } from 'preact/hooks';
import { type Grade, soundWay } from '../../grading/index.ts';
import { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { t } from '../words/words.ts';
import { didText } from './moments.ts';
import type { SoundWay } from './use-sound-way.ts';
import { useWidth } from './use-width.ts';

const HEIGHT = 280;
const EDGE = { left: 44, right: 18, top: 26, bottom: 48 };

type Points = Grade['line'];

interface Scale {
  x(tenths: number): number;
  y(left: number): number;
  most: number;
  end: number;
}

function scaleOf(lines: Points[], atLeast: number, width: number): Scale {
  const all = lines.flat();
  const most = Math.max(...all.map(([, , left]) => left), 1);
  const end = Math.max(...all.map(([, tenths]) => tenths), atLeast, 1);
  return {
    most,
    end,
    x: (tenths) => EDGE.left + (tenths / end) * (width - EDGE.left - EDGE.right),
    y: (left) => HEIGHT - EDGE.bottom - (left / most) * (HEIGHT - EDGE.top - EDGE.bottom),
  };
}

/** Level until the next test, then straight down: between tests nothing is learned. */
const steps = (line: Points, { x, y }: Scale): string =>
  line.map(([, tenths, left], i) => (i === 0 ? `M${x(tenths)} ${y(left)}` : `H${x(tenths)}V${y(left)}`)).join('');

export function Line({ session, grade, way }: { session: Session; grade: Grade; way: SoundWay }) {
  const { ref, width } = useWidth<HTMLElement>(620);
  const { line } = grade;
  if (line.length < 2) return <p class="hint">{t('review.line.hardly')}</p>;
  const repairs = repairsAt(session);
  const scale = scaleOf(way.line === null ? [line] : [line, way.line], grade.tenths, width);
  const text = t('debrief.lineText', { first: line[0][2], last: line[line.length - 1][2] });
  return (
    <figure class="review-chart" ref={ref}>
      <figcaption>
        <h2>{t('debrief.lineTitle')}</h2>
        <p>{text}</p>
      </figcaption>
      <svg viewBox={`0 0 ${width} ${HEIGHT}`} role="img" aria-label={`${t('debrief.lineTitle')}. ${text}`}>
        <Axes scale={scale} width={width} />
        {repairs.map((tenths) => (
          <g key={tenths}>
            <path class="repair-mark" d={`M${scale.x(tenths)} ${EDGE.top}V${HEIGHT - EDGE.bottom}`} />
            <text x={scale.x(tenths)} y={EDGE.top - 8} text-anchor="middle">
              {t('review.line.repairMark')}
            </text>
          </g>
        ))}
        <path class="your-line" d={steps(line, scale)} />
        {/* On top, so that its dashes show where the two run together. */}
        {way.line === null ? null : <path class="sound-line" d={steps(way.line, scale)} />}
        {line.map(([entry, tenths, left]) => (
          <circle key={entry} class="your-dot" cx={scale.x(tenths)} cy={scale.y(left)} r="4" />
        ))}
      </svg>
      <p class="legend">
        <span class="legend-you">{t('review.line.legendYou')}</span>
        {way.line === null ? null : <span class="legend-sound">{t('review.line.legendSound')}</span>}
        {repairs.length === 0 ? null : <span>{t('review.line.legendRepair')}</span>}
        {way.line === null && !way.failed ? <span class="hint">{t('review.line.working')}</span> : null}
      </p>
      <LineTable session={session} line={line} way={way} />
    </figure>
  );
}

/** Whole minutes at an even distance, seven at most. */
function ticksTo(end: number): number[] {
  const step = [1, 2, 5, 10, 20, 30, 60, 120].find((minutes) => end / (minutes * 10) < 7) ?? 240;
  return Array.from({ length: Math.floor(end / (step * 10)) + 1 }, (_, i) => i * step * 10);
}

function Axes({ scale: { x, y, most, end }, width }: { scale: Scale; width: number }) {
  const rows = most <= 6 ? Array.from({ length: most + 1 }, (_, i) => i) : [0, Math.round(most / 2), most];
  return (
    <>
      {rows.map((left) => (
        <g key={left}>
          <path class="grid" d={`M${EDGE.left} ${y(left)}H${width - EDGE.right}`} />
          <text x={EDGE.left - 9} y={y(left) + 5} text-anchor="end">
            {left}
          </text>
        </g>
      ))}
      {ticksTo(end).map((tenths) => (
        <g key={tenths}>
          <path class="axis" d={`M${x(tenths)} ${HEIGHT - EDGE.bottom}v5`} />
          <text x={x(tenths)} y={HEIGHT - EDGE.bottom + 22} text-anchor="middle">
            {tenths / 10}
          </text>
        </g>
      ))}
      <text x={(width + EDGE.left - EDGE.right) / 2} y={HEIGHT - 6} text-anchor="middle">
        {t('debrief.lineX')}
      </text>
      <path class="axis" d={`M${EDGE.left} ${EDGE.top}V${HEIGHT - EDGE.bottom}H${width - EDGE.right}`} />
    </>
  );
}

function repairsAt({ attempt }: Session): number[] {
  let tenths = 0;
  const at = attempt.records.flatMap(({ entry, cost }) => {
    tenths += cost.tenths;
    return entry.action.do === 'repair' ? [tenths] : [];
  });
  return [...new Set(at)];
}

function LineTable({ session, line, way }: { session: Session; line: Points; way: SoundWay }) {
  const { model, job, stored } = session;
  const { line: soundLine } = way;
  const sound = useMemo(
    () => (soundLine === null ? session : Session.toLookAt(model, job, stored, soundWay(model, job))),
    [soundLine, session, model, job, stored],
  );
  return (
    <details>
      <summary>{t('debrief.asTable')}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{t('review.line.minute')}</th>
            <th scope="col">{t('review.line.what')}</th>
            <th scope="col">{t('review.line.left')}</th>
          </tr>
        </thead>
        <tbody>
          {line.map(([entry, tenths, left]) => (
            <tr key={entry}>
              <td>{minutes(tenths)}</td>
              <td>{entry < 0 ? t('review.line.first') : didText(session, entry)}</td>
              <td>{left}</td>
            </tr>
          ))}
          {(soundLine ?? []).map(([entry, tenths, left]) => (
            <tr key={`sound${entry}`}>
              <td>{minutes(tenths)}</td>
              <td>{t('review.line.soundWhat', { did: entry < 0 ? t('review.line.first') : didText(sound, entry) })}</td>
              <td>{left}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
