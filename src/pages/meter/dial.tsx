/** The dial: turned by a click on its print, by the wheel or with the arrow keys. */
import type { MeterFunction } from '../../instruments/index.ts';
import type { Session } from '../state/session.ts';
import { t } from '../words/words.ts';
import { piece } from './art.ts';

interface Position {
  fn: MeterFunction;
  /** Degrees, as drawn. */
  angle: number;
  print: string;
  /** Drawn in the place of letters. */
  sign?: string;
}

const POSITIONS: readonly Position[] = [
  { fn: 'off', angle: -60, print: 'OFF' },
  { fn: 'volts-dc', angle: -25, print: 'V DC' },
  { fn: 'ohms', angle: 60, print: 'Ω' },
  { fn: 'continuity', angle: 98, print: '', sign: 'M248 380.5h.1M253 375.5q4 5 0 10M259 372.5q6 8 0 16' },
  { fn: 'diode', angle: 136, print: '', sign: 'M223 435h7M242 435h7M242 427v16M230 427L242 435L230 443Z' },
  { fn: 'amps', angle: 174, print: 'A' },
  { fn: 'volts-lo', angle: 212, print: 'LOW Z' },
];
const KNOB = piece('dial');
const CENTRE = { x: 165, y: 368 };
/** What of the drawing is shown, units. */
const SHEET = { x: 45, y: 268, w: 240, h: 200 };

export function Dial({ session }: { session: Session }) {
  const { dial } = session.bench;
  const at = POSITIONS.findIndex((p) => p.fn === dial);
  const turn = (to: number): void => {
    const next = POSITIONS[to];
    if (next !== undefined && next.fn !== dial) session.act({ do: 'dial', fn: next.fn });
  };
  const onKey = (event: KeyboardEvent): void => {
    const step = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 }[event.key];
    if (step === undefined) return;
    event.preventDefault();
    turn(at + step);
  };
  return (
    <div
      class="dial"
      id="dial"
      role="slider"
      tabIndex={0}
      aria-label={t('meter.dial')}
      aria-valuemin={0}
      aria-valuemax={POSITIONS.length - 1}
      aria-valuenow={at}
      aria-valuetext={t(`meter.${dial}`)}
      onKeyDown={onKey}
    >
      <svg
        class="art"
        viewBox={`${SHEET.x} ${SHEET.y} ${SHEET.w} ${SHEET.h}`}
        aria-hidden="true"
        onClick={(event) => turn(nearest(event))}
      >
        <circle class="d b1" cx={CENTRE.x} cy={CENTRE.y} r="74" />
        {POSITIONS.map((position) => (
          <Print key={position.fn} {...position} />
        ))}
        <g
          transform={`rotate(${POSITIONS[at]?.angle ?? 0} ${CENTRE.x} ${CENTRE.y})`}
          dangerouslySetInnerHTML={{ __html: KNOB }}
        />
      </svg>
    </div>
  );
}

function Print({ angle, print, sign }: Position) {
  const [x, y] = [Math.sin((angle * Math.PI) / 180), -Math.cos((angle * Math.PI) / 180)];
  return (
    <>
      <path
        class="dial-mark"
        d={`M${CENTRE.x + 62 * x} ${CENTRE.y + 62 * y}L${CENTRE.x + 72 * x} ${CENTRE.y + 72 * y}`}
      />
      {sign === undefined ? null : <path class="dial-sound" d={sign} />}
      <text x={CENTRE.x + 86 * x} y={CENTRE.y + 88 * y + 6} font-size="19" class="b online" text-anchor={anchor(x)}>
        {print}
      </text>
    </>
  );
}

const anchor = (x: number): 'start' | 'middle' | 'end' => (Math.abs(x) < 0.2 ? 'middle' : x > 0 ? 'start' : 'end');

/** The position whose direction from the middle is nearest to the click; on the knob itself the next one. */
function nearest(event: MouseEvent): number {
  const svg = event.currentTarget;
  if (!(svg instanceof SVGSVGElement)) return -1;
  const box = svg.getBoundingClientRect();
  const scale = box.width / SHEET.w;
  const [x, y] = [
    event.clientX - box.left - (CENTRE.x - SHEET.x) * scale,
    event.clientY - box.top - (CENTRE.y - SHEET.y) * scale,
  ];
  const angle = (Math.atan2(x, -y) * 180) / Math.PI;
  const off = (to: number): number => Math.abs(((to - angle + 540) % 360) - 180);
  return POSITIONS.reduce(
    (best, position, i) => (off(position.angle) < off(POSITIONS[best]?.angle ?? 0) ? i : best),
    0,
  );
}
