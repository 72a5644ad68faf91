/** The slip under the drawing: what was just seen, heard and read, or why something could not be done. Spoken, too. */
import { useEffect, useRef } from 'preact/hooks';
import type { Record } from '../../job/index.ts';
import { PointRow } from '../here/point-row.tsx';
import { ActButton } from '../parts/act-button.tsx';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { minutes } from '../state/settings.ts';
import { shelf } from '../state/store.ts';
import { takeLead, ui } from '../state/ui.ts';
import { actionName } from '../words/actions.ts';
import { leadName } from '../words/leads.ts';
import { pointName, zoneName } from '../words/names.ts';
import { doneText, toDoText, whyText } from '../words/precautions.ts';
import { refusalText, remedyFor } from '../words/refusal.ts';
import { sealOf, sealText } from '../words/sealed.ts';
import { displayLine, seenLines } from '../words/seen.ts';
import { sentence, stopped, t } from '../words/words.ts';

export function Slip({ session }: { session: Session }) {
  const ref = useRef<HTMLDivElement>(null);
  // Panels that lie over the bench end above the slip, however high it is.
  useEffect(() => {
    const slip = ref.current;
    const floor = slip?.closest<HTMLElement>('.floor');
    if (slip === null || !floor) return;
    const watcher = new ResizeObserver(() => floor.style.setProperty('--slip', `${slip.offsetHeight}px`));
    watcher.observe(slip);
    return () => watcher.disconnect();
  }, []);
  return (
    <div class="slip-place" ref={ref}>
      <Warnings session={session} />
      <InHand session={session} />
      <Latest session={session} />
    </div>
  );
}

function Warnings({ session }: { session: Session }) {
  const { saved } = useObservable(session.view);
  const { lasting, differs } = useObservable(shelf);
  return (
    <>
      {lasting ? null : <p class="slip warn">{t('app.notLasting')}</p>}
      {saved ? null : (
        <p class="slip warn" role="alert">
          {t('app.notSaved')}
        </p>
      )}
      {differs ? <p class="slip warn">{t('app.differs')}</p> : null}
    </>
  );
}

/** The lead in hand, or the point that was pointed at with none in hand. */
function InHand({ session }: { session: Session }) {
  const { leadInHand, missed, point } = useObservable(ui);
  useObservable(session.view);
  if (leadInHand !== null) {
    const lead = sentence(leadName(session, leadInHand));
    return (
      <div class="slip">
        <p class="slip-text" role="status">
          {/* Set anew each time: the same words twice would be spoken once. */}
          <span key={missed}>{missed === 0 ? t('slip.inHand', { lead }) : t('slip.noPoint', { lead })}</span>
        </p>
        <button type="button" class="plain" onClick={() => takeLead(null)}>
          {t('slip.putDown')}
        </button>
      </div>
    );
  }
  if (point === null || isGone(session, point)) return null;
  const plug = sealOf(session, point);
  if (plug !== null) return <SealedCard session={session} point={point} plug={plug} />;
  return (
    <ul class="slip slip-point">
      <PointRow session={session} point={point} />
      <li>
        <button type="button" class="plain" aria-label={t('slip.dismiss')} onClick={() => ui.update({ point: null })}>
          ✕
        </button>
      </li>
    </ul>
  );
}

/** A pin under its seal: why no lead gets there, and the plug to part. */
function SealedCard({ session, point, plug }: { session: Session; point: string; plug: string }) {
  return (
    <div class="slip slip-point" role="status">
      <p>
        <b>{sentence(pointName(session.model, point))}.</b> {sealText(session, plug)}
      </p>
      <ActButton session={session} action={{ do: 'unplug', connector: plug }} kind="work" />
    </div>
  );
}

/** The card of a point goes with its place: a cover closed, a wire put back, the student elsewhere. */
function isGone({ attempt }: Session, point: string): boolean {
  const code = attempt.refusal({ do: 'lead', lead: 'red', point })?.code;
  return code !== undefined && code !== 'must-be-parted';
}

function Latest({ session }: { session: Session }) {
  const { outcome, version } = useObservable(session.view);
  const records = outcome.kind === 'done' ? outcome.records : [];
  const lines = records.flatMap((r) => linesOf(session, r));
  const gone = records.flatMap((r) => lapsed(session, r));
  const called = records.flatMap((r) => calls(session, r));
  const refusal = outcome.kind === 'refused' ? outcome.refusal : null;
  const remedy = refusal === null ? null : remedyFor(session, refusal);
  const quiet = records
    .filter((r) => linesOf(session, r).length === 0)
    .map((r) => actionName(session, r.entry.action, r.before));
  const spent = records.reduce((sum, r) => sum + r.cost.tenths, 0);
  const begins = session.attempt.records.length <= 1 && refusal === null;
  const empty = !begins && [...lines, ...gone, ...called].length === 0 && !records.some(helperLeft) && refusal === null;
  return (
    <div class={refusal === null ? 'slip' : 'slip refused'} data-empty={empty}>
      <div
        role="status"
        aria-atomic="true"
        class="slip-text"
        id="slip"
        aria-label={t('slip.label')}
        tabIndex={-1}
        data-rest
      >
        {/* Set anew each time: the same words twice would be spoken once. */}
        <div key={version}>
          {begins ? <p>{t('slip.begin')}</p> : null}
          {lines.length === 0 ? null : <p>{lines.join(' ')}</p>}
          {quiet.length === 0 ? null : <p class="unseen">{quiet.join('. ')}</p>}
          {refusal === null ? null : (
            <p>
              <b>{t('slip.refused')}</b> {refusalText(session, refusal)}
            </p>
          )}
          {records.some(helperLeft) ? <p>{t('slip.helperLeft')}</p> : null}
          {gone.length === 0 ? null : <p>{t('slip.lapsed', { what: gone.join(' ') })}</p>}
          {called.map((line) => (
            <p key={line} class="call">
              {line}
            </p>
          ))}
          {called.length === 0 ? null : <p class="call">{t('slip.failed')}</p>}
        </div>
      </div>
      {begins ? (
        <button type="button" class="plain" onClick={() => ui.update({ clip: 'safety', clipLast: 'safety' })}>
          {t('slip.openSafety')}
        </button>
      ) : null}
      {remedy === null ? null : <ActButton session={session} action={remedy} kind="work" />}
      {spent > 0 ? <span class="act-cost">{t('slip.spent', { minutes: minutes(spent) })}</span> : null}
    </div>
  );
}

/** What is plain from the screen itself needs no line. */
const SILENT = ['lead', 'read', 'dial', 'jack', 'range', 'zero', 'minmax', 'start', 'instrument', 'mark', 'note'];

function linesOf(session: Session, record: Record): string[] {
  const { action } = record.entry;
  const reading = displayLine(record, (point) => pointName(session.model, point));
  const quiet = reading !== null && action.do !== 'operate' && record.seen.codes.length === 0;
  if (action.do === 'walk') return [t('slip.arrived', { place: zoneName(session.book, action.zone) })];
  if (action.do === 'operate' && reading === null && record.seen.codes.length === 0) {
    return [`${stopped(actionName(session, action, record.before))} ${t('seen.quiet')}`];
  }
  const lines = [
    ...(reading === null ? [] : [reading]),
    ...(quiet ? [] : seenLines(session.model, session.job, record)),
  ];
  return lines.length === 0 && !SILENT.includes(action.do)
    ? [`${stopped(actionName(session, action, record.before))} ${t('seen.done')}`]
    : lines;
}

/** Did the helper's time run out? */
const helperLeft = ({ entry, before, after }: Record): boolean =>
  entry.action.do !== 'helper' && before.helperUntilMs !== null && after.helperUntilMs === null;

/** Precautions that something else has taken away: said, since the board is folded in. */
function lapsed({ model }: Session, { entry, before, after }: Record): string[] {
  if (entry.action.do === 'precaution') return [];
  const gone = before.precautions.filter((id) => !after.precautions.includes(id));
  return gone.map((id) => doneText(model, id));
}

/** A critical lapse is called out at once, as anybody in a shop would; the others are talked over in the debrief. */
function calls({ model }: Session, record: Record): string[] {
  return record.lapses
    .filter((lapse) => lapse.critical)
    .map((lapse) => {
      const missing = lapse.missing.map((id) => toDoText(model, id));
      return t('slip.lead', { why: whyText(model, lapse.check) ?? missing.join(' ') });
    });
}
