/** The instrument in hand. It lies over the stage and can be moved. */
import { useRef } from 'preact/hooks';
import { rangesOf } from '../../instruments/index.ts';
import { useObservable } from '../state/observable.ts';
import { shownOn } from '../state/reading.ts';
import type { Session } from '../state/session.ts';
import { changeSettings, settings } from '../state/settings.ts';
import { isHeld, ui } from '../state/ui.ts';
import { costText } from '../words/actions.ts';
import { controlName, valueName } from '../words/names.ts';
import { glowWord } from '../words/seen.ts';
import { t } from '../words/words.ts';
import { Buttons } from './buttons.tsx';
import { Dial } from './dial.tsx';
import { Lcd } from './display.tsx';
import { Grip } from './grip.tsx';
import { Jacks } from './jacks.tsx';
import { LampFace } from './lamp.tsx';
import { Leads } from './leads.tsx';
import { usePlacement } from './use-placement.ts';

export function Tool({ session }: { session: Session }) {
  useObservable(session.view);
  const now = useObservable(ui);
  const { toolFolded, leadInHand } = now;
  const held = isHeld(now, session.bench.leads);
  const ref = useRef<HTMLElement>(null);
  const { at, move, put } = usePlacement(session, ref);
  const isLamp = session.bench.instrument === 'lamp';
  const title = isLamp ? t('meter.lampTitle') : t('meter.title');
  const style = at === null ? {} : { left: `${at.x}px`, top: `${at.y}px`, right: 'auto', bottom: 'auto' };
  const classes = ['tool', isLamp ? 'tool-lamp' : 'tool-meter', leadInHand === null ? '' : 'tool-lent'];
  return (
    <section class={classes.join(' ')} id="tool" aria-label={title} tabIndex={-1} ref={ref} style={style}>
      <Grip
        title={held ? title : `${title} ${aside(session)}`.trim()}
        isLamp={isLamp}
        held={held}
        tool={ref}
        onMove={move}
        onPut={put}
      />
      {held ? <InHand session={session} isLamp={isLamp} folded={toolFolded} /> : null}
      <Leads session={session} side={!held} />
    </section>
  );
}

function InHand({ session, isLamp, folded }: { session: Session; isLamp: boolean; folded: boolean }) {
  return (
    <>
      <div class="tool-shown">
        {isLamp ? <LampFace session={session} /> : <MeterDisplay session={session} />}
        <ReadRow session={session} />
      </div>
      {isLamp ? null : <FaceNote session={session} />}
      {isLamp || folded ? null : (
        <div class="tool-face">
          <Buttons session={session} />
          <Dial session={session} />
          <Jacks session={session} />
        </div>
      )}
    </>
  );
}

/** What an instrument that was laid aside still shows: its reading, or what the dial is at. */
function aside(session: Session): string {
  const { instrument, dial, redJack } = session.bench;
  const display = shownOn(session.attempt, instrument === 'meter' && ui.value.meterHold)?.display;
  if (display === undefined) {
    if (instrument === 'lamp' || dial === 'off') return '';
    return t(`kinds.${redJack === 'amps' ? 'amps' : dial}`);
  }
  return session.bench.instrument === 'lamp' ? glowWord(display.text) : `${display.text} ${display.unit}`;
}

function MeterDisplay({ session }: { session: Session }) {
  const { bench, attempt } = session;
  const { meterHold } = useObservable(ui);
  const fn = bench.dial === 'off' ? '' : t(`kinds.${bench.redJack === 'amps' ? 'amps' : bench.dial}`);
  return (
    <Lcd
      display={shownOn(attempt, meterHold)?.display ?? null}
      function_={fn}
      marks={marksOf(session, meterHold)}
      keeps={bench.minMax}
      on={bench.dial !== 'off'}
    />
  );
}

/** What the buttons are at, in the trade's signs: the triangle is for a value that is taken off. */
function marksOf({ bench }: Session, hold: boolean): string {
  const range = bench.range === null ? undefined : rangesOf(bench.dial)[bench.range];
  return [hold ? t('meter.hold') : '', bench.zero === null ? '' : 'Δ', range ?? ''].filter((m) => m !== '').join(' ');
}

/** One line that is always there, so that nothing below it moves when it has something to say. */
function FaceNote({ session }: { session: Session }) {
  const { jackFuseBlown, redJack } = session.bench;
  const text = jackFuseBlown && redJack === 'amps' ? t('meter.fuseGone') : heldText(session);
  return (
    <p class="tool-note" title={text}>
      {text}
    </p>
  );
}

/** A reading that was taken while a control was held says so. */
function heldText({ book, attempt }: Session): string {
  const action = shownOn(attempt, ui.value.meterHold)?.record.entry.action;
  if (action?.do !== 'operate') return '';
  const words = {
    control: controlName(book, action.control).toLowerCase(),
    value: valueName(book, action.control, action.value),
  };
  return t('meter.held', words);
}

function ReadRow({ session }: { session: Session }) {
  const { autoRead } = useObservable(settings);
  const cost = costText(session, { do: 'read' });
  const fuseGone = session.bench.jackFuseBlown && session.bench.instrument === 'meter';
  return (
    <div class="read-row">
      <button type="button" class="read" onClick={() => session.act({ do: 'read' })}>
        {t('act.read')} <span class="act-cost">{cost}</span>
      </button>
      {fuseGone ? (
        <RenewFuse session={session} />
      ) : (
        <label title={t('meter.autoHint')}>
          <input
            type="checkbox"
            checked={autoRead}
            onChange={(event) => changeSettings({ autoRead: event.currentTarget.checked })}
          />
          {t('meter.auto')}
        </label>
      )}
    </div>
  );
}

/** In the place of a setting that a meter with a blown fuse can do without. */
function RenewFuse({ session }: { session: Session }) {
  return (
    <button type="button" class="plain renew-fuse" onClick={() => session.act({ do: 'renewFuse' })}>
      {t('meter.renewFuse')} <span class="act-cost">{costText(session, { do: 'renewFuse' })}</span>
    </button>
  );
}
