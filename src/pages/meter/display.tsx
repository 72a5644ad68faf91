/** The meter's display: digits of the drawing's own polygons. */
import { useEffect, useState } from 'preact/hooks';
import { CAPTURE_MS } from '../../instruments/index.ts';
import type { Display } from '../../job/index.ts';
import { isStill, settings } from '../state/settings.ts';
import { t } from '../words/words.ts';
import { segments } from './art.ts';
import { DIGITS, digitsOf, lit } from './digits.ts';

/** A display that does not stand still goes from one value to the other in this time, ms. */
const SWING_MS = 450;
const CELLS = Array.from({ length: DIGITS }, (_, i) => segments(i + 1));
const POINT_X = [113.5, 149.5, 185.5];

interface Props {
  display: Display | null;
  /** What the dial's function is called on the display. */
  function_: string;
  /** What the meter's buttons are at. */
  marks: string;
  /** Does it keep minimum and maximum? */
  keeps: boolean;
  on: boolean;
}

export function Lcd({ display, function_, marks, keeps, on }: Props) {
  const text = useSwing(display);
  const { minus, cells, points } = digitsOf(on ? text : '');
  return (
    <svg
      class="lcd art"
      viewBox="74 80 182 98"
      role="img"
      aria-label={[spoken(display), on ? marks : ''].join(' ').trim()}
    >
      <rect class="lcd" x="74" y="80" width="182" height="98" rx="5" />
      {on ? (
        <text x="82" y="97" font-size="17" class="b online">
          {function_}
        </text>
      ) : null}
      {CELLS.map((cell, i) =>
        cell.map(({ name, d }) => (
          <path key={`${i}${name}`} class={lit(cells[i] ?? ' ', name) ? 'lcdink' : 'lcdoff'} d={d} />
        )),
      )}
      {POINT_X.map((x, i) => (
        <rect key={x} class={points.includes(i) ? 'lcdink' : 'lcdoff'} x={x} y="146" width="6" height="6" />
      ))}
      {minus ? <rect class="lcdink" x="76" y="125" width="8" height="5" /> : null}
      <text x="228" y="151" font-size="22" class="b online">
        {on ? (display?.unit ?? '') : ''}
      </text>
      <text x="82" y="172" font-size="16" class="online">
        {on ? below(display, keeps) : ''}
      </text>
      {on ? (
        <text x="248" y="97" font-size="15" class="online" text-anchor="end">
          {[marks, display?.beep === true ? t('meter.beep') : ''].join(' ').trim()}
        </text>
      ) : null}
    </svg>
  );
}

/** Under the digits: what was kept, or between what they jump. */
function below(display: Display | null, keeps: boolean): string {
  const { least, most } = display ?? {};
  if (least !== undefined && most !== undefined) return t('meter.leastMost', { least, most });
  return keeps ? t('meter.keeping', { ms: CAPTURE_MS }) : jumps(display);
}

/** A still eye reads one of the two values only: both stand below. */
function jumps(display: Display | null): string {
  if (display?.from === undefined || display.to === undefined) return '';
  return t('meter.jumps', { from: display.from, to: display.to });
}

function useSwing(display: Display | null): string {
  const [high, setHigh] = useState(false);
  const swings = display?.from !== undefined && display.to !== undefined && !isStill(settings.value);
  useEffect(() => {
    if (!swings) return;
    const timer = setInterval(() => setHigh((h) => !h), SWING_MS);
    return () => clearInterval(timer);
  }, [swings]);
  if (display === null) return '----';
  if (!swings) return display.text;
  return (high ? display.to : display.from) ?? display.text;
}

function spoken(display: Display | null): string {
  if (display === null) return `${t('meter.display')}: ${t('meter.dash')}`;
  const { text, unit, from, to, least, most } = display;
  const value = from !== undefined && to !== undefined ? `${from} … ${to}` : text;
  const kept = least !== undefined && most !== undefined ? `, ${t('meter.leastMost', { least, most })}` : '';
  return `${t('meter.display')}: ${value} ${unit}${kept}`;
}
