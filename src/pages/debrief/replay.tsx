/** The attempt again on the machine itself, step by step. Nothing can be done to it here. */
import { useEffect, useState } from 'preact/hooks';
import type { StageEvents } from '../../game/view.ts';
import { Attempt, type Record } from '../../job/index.ts';
import { StagePane } from '../shop/stage-pane.tsx';
import { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { resetUi } from '../state/ui.ts';
import { actionName } from '../words/actions.ts';
import { pointName, zoneName } from '../words/names.ts';
import { displayLine, isAnswered, seenLines } from '../words/seen.ts';
import { sentence, stopped, t } from '../words/words.ts';

const nothing = (): void => undefined;
const LOOK_ONLY: StageEvents = {
  onPoint: nothing,
  onZone: nothing,
  onControl: nothing,
  onPart: nothing,
  onMiss: nothing,
  onHover: nothing,
};

/** A hand on the slider comes to rest before the attempt is worked through anew, ms. */
const REST_MS = 120;

export function Replay({ session }: { session: Session }) {
  const [open, setOpen] = useState(false);
  return (
    <section class="replay" aria-labelledby="debrief-replay">
      <h2 id="debrief-replay">{t('debrief.replay')}</h2>
      {open ? (
        <Scrub session={session} />
      ) : (
        <button
          type="button"
          class="plain"
          onClick={() => {
            resetUi();
            setOpen(true);
          }}
        >
          {t('debrief.replayOpen')}
        </button>
      )}
    </section>
  );
}

function Scrub({ session }: { session: Session }) {
  const count = session.attempt.records.length;
  const [step, setStep] = useState(1);
  const [shown, setShown] = useState(() => upTo(session, 1));
  useEffect(() => {
    const timer = setTimeout(() => setShown(upTo(session, step)), REST_MS);
    return () => clearTimeout(timer);
  }, [session, step]);
  const go = (to: number): void => setStep(Math.max(1, Math.min(count, to)));
  const record = session.attempt.records[step - 1];
  return (
    <>
      <div class="scrub">
        <button type="button" class="plain" disabled={step <= 1} onClick={() => go(step - 1)}>
          {t('debrief.replayEarlier')}
        </button>
        <input
          type="range"
          min={1}
          max={count}
          value={step}
          aria-label={t('debrief.replayStep', { step, count })}
          onInput={(event) => go(Number(event.currentTarget.value))}
        />
        <button type="button" class="plain" disabled={step >= count} onClick={() => go(step + 1)}>
          {t('debrief.replayLater')}
        </button>
      </div>
      <div role="status">
        {record === undefined ? null : <StepLine session={session} record={record} step={step} />}
      </div>
      <div class="replay-stage">
        <StagePane session={shown} events={LOOK_ONLY} />
      </div>
    </>
  );
}

function StepLine({ session, record, step }: { session: Session; record: Record; step: number }) {
  const { attempt, book, model, job } = session;
  const tenths = attempt.records.slice(0, step).reduce((sum, r) => sum + r.cost.tenths, 0);
  const { action } = record.entry;
  const reading = displayLine(record, (point) => pointName(model, point));
  const done = reading === null || action.do === 'operate' ? [actionName(session, action, record.before)] : [];
  const did = [...done, ...(reading === null ? [] : [reading])];
  const seen = isAnswered(record) ? seenLines(model, job, record) : [];
  return (
    <p class="step-line">
      <b>{t('debrief.replayStep', { step, count: attempt.records.length })}</b>
      {` · ${t('debrief.step', { minute: minutes(tenths) })} · ${[sentence(zoneName(book, record.after.zone)), ...did, ...seen].map(stopped).join(' ')}`}
    </p>
  );
}

/** The machine as it stood after so many steps. */
function upTo({ model, job, stored, attempt }: Session, count: number): Session {
  const part = new Attempt(model, job, attempt.log.header.seed);
  for (const entry of attempt.log.entries.slice(0, count)) part.act(entry.action);
  return Session.toLookAt(model, job, stored, part);
}
