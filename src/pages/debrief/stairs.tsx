/** The voltage staircase: node by node along the current's path, this machine beside a sound one. */
import { useState } from 'preact/hooks';
import type { Stair, Staircase } from '../../grading/index.ts';
import type { Model } from '../../machine/index.ts';
import type { Session } from '../state/session.ts';
import { bareName, pointName, wiresAt } from '../words/names.ts';
import { sentence, t } from '../words/words.ts';
import { lost, mostTelling, parting } from './staircase-choice.ts';

/** Volts of the whole width. */
const FULL = 14;
const SCALE = [0, 4, 8, 12] as const;
/** Volts between the two from which a step is worth a word. */
const TELLS = 0.1;

const share = (volts: number): string => `${(100 * Math.max(0, Math.min(volts, FULL))) / FULL}%`;
const figure = (volts: number): string => volts.toFixed(2);

export function Stairs({ session, staircases }: { session: Session; staircases: Staircase[] }) {
  const [chosen, choose] = useState(() => mostTelling(session, staircases));
  const staircase = staircases.find((s) => s.id === chosen);
  if (staircase === undefined) return null;
  const { model, book } = session;
  const { title, stairs } = staircase;
  return (
    <section class="staircase" aria-labelledby="debrief-stairs">
      <h2 id="debrief-stairs">{t('debrief.stairsTitle')}</h2>
      <p>{t('debrief.stairsText', { black: pointName(model, book.reference) })}</p>
      <fieldset class="stairs-choice">
        <legend class="unseen">{t('review.stairs.which')}</legend>
        {staircases.map((s) => (
          <label key={s.id} class="check">
            <input type="radio" name="staircase" checked={s.id === chosen} onChange={() => choose(s.id)} />
            {s.title}
          </label>
        ))}
      </fieldset>
      <p class="parting">{partingText(model, stairs)}</p>
      <table class="stairs">
        <caption>{title}</caption>
        <StairsHead />
        <tbody>
          {stairs.map((stair, i) => (
            <StairRow key={stair.point} model={model} stair={stair} parts={i === parting(stairs) && differ(stairs)} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function StairsHead() {
  return (
    <thead>
      <tr>
        <th scope="col">{t('debrief.stairsPoint')}</th>
        <th scope="col" class="bars-cell">
          <svg
            class="volt-scale"
            width="100%"
            height="18"
            role="img"
            aria-label={t('review.stairs.volts', { volts: '0–14' })}
          >
            <defs>
              <pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
                <rect class="hatch-ground" width="6" height="6" />
                <path class="hatch-line" d="M0 0V6" />
              </pattern>
            </defs>
            {SCALE.map((volts) => (
              <text key={volts} x={share(volts)} y="14" text-anchor={volts === 0 ? 'start' : 'middle'}>
                {t('review.stairs.volts', { volts })}
              </text>
            ))}
          </svg>
        </th>
        <th scope="col" class="volts-cell">
          <Swatch kind="here" />
          {t('debrief.stairsHere')}
        </th>
        <th scope="col" class="volts-cell">
          <Swatch kind="sound" />
          {t('debrief.stairsSound')}
        </th>
      </tr>
    </thead>
  );
}

const Swatch = ({ kind }: { kind: 'here' | 'sound' }) => (
  <svg class="swatch" width="28" height="12" aria-hidden="true">
    <rect class={`stair-${kind}`} x="1" y="1" width="26" height="10" />
  </svg>
);

function StairRow({ model, stair, parts }: { model: Model; stair: Stair; parts: boolean }) {
  const wires = wiresAt(model, stair.point);
  return (
    <tr class={parts ? 'parts-here' : ''}>
      <th scope="row">
        {sentence(bareName(model, stair.point))}
        {wires.length > 0 && wires.length < 3 ? (
          <span class="stair-wire"> {wires.map((w) => `${w.id} ${w.colour}`).join(', ')}</span>
        ) : null}
      </th>
      <td class="bars-cell">
        <svg width="100%" height="20" aria-hidden="true">
          {SCALE.slice(1).map((volts) => (
            <line key={volts} class="grid" x1={share(volts)} x2={share(volts)} y1="0" y2="20" />
          ))}
          <rect class="stair-here" x="0" y="1.5" width={share(stair.here)} height="8" />
          <rect class="stair-sound" x="0" y="11" width={share(stair.sound)} height="7.5" />
        </svg>
      </td>
      <td class="volts-cell">{figure(stair.here)} V</td>
      <td class="volts-cell">{figure(stair.sound)} V</td>
    </tr>
  );
}

const differ = (stairs: Stair[]): boolean => {
  const at = parting(stairs);
  return Math.abs(lost(stairs, at, 'here') - lost(stairs, at, 'sound')) >= TELLS;
};

/** The step at which the two go apart, in a sentence. */
function partingText(model: Model, stairs: Stair[]): string {
  if (!differ(stairs)) return t('review.stairs.same');
  const at = parting(stairs);
  const [here, sound] = [lost(stairs, at, 'here'), lost(stairs, at, 'sound')].map(figure);
  const to = bareName(model, stairs[at].point);
  if (at === 0)
    return t('review.stairs.supply', { at: to, here: figure(stairs[0].here), sound: figure(stairs[0].sound) });
  return t('review.stairs.parts', { from: bareName(model, stairs[at - 1].point), to, here, sound });
}
