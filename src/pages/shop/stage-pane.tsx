/** The drawing of the place. It is brought when the shop is entered; without it the list has everything. */
import { useEffect, useRef, useState } from 'preact/hooks';
import type { Stage, StageEvents } from '../../game/stage.ts';
import { moment } from '../state/moment.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { settings } from '../state/settings.ts';
import { sheetDrawing, sheets } from '../state/sheets.ts';
import { type Ui, ui } from '../state/ui.ts';
import { zoneName } from '../words/names.ts';
import { t } from '../words/words.ts';
import { stageEvents } from './stage-events.ts';
import { stageView } from './stage-view.ts';

/** The stage that is on screen, for the buttons that zoom and find. */
export const onStage: { current: Stage | null } = { current: null };

interface Props {
  session: Session;
  /** What pointing means; in a replay it means nothing. */
  events?: StageEvents;
}

export function StagePane({ session, events }: Props) {
  const host = useRef<HTMLDivElement>(null);
  const [stage, setStage] = useState<Stage | null>(null);
  const [failed, setFailed] = useState(false);
  const view = useObservable(session.view);
  const now = useObservable(ui);
  const shown = useObservable(moment);
  const set = useObservable(settings);

  useEffect(() => {
    let closed = false;
    let made: Stage | null = null;
    const open = async (): Promise<void> => {
      const { createStage, loadDrawing } = await import('../../game/stage.ts');
      if (closed || host.current === null) return;
      made = createStage(host.current, events ?? stageEvents(session), loadDrawing, {
        landing: (end) => landing(session, end),
      });
      onStage.current = made;
      setStage(made);
    };
    open().catch(() => setFailed(true));
    return () => {
      closed = true;
      made?.destroy();
      onStage.current = null;
    };
  }, [session.model, events]);

  useEffect(() => stage?.show(stageView(session, now)), [stage, view, now, shown, set, session]);
  useEffect(() => stage?.showSheet(now.sheet === null ? null : sheetDrawing(now.sheet)), [stage, now.sheet]);
  useEffect(() => stage?.setSplit(now.split), [stage, now.split]);

  return (
    <div class="stage" role="img" aria-label={drawn(session, now)}>
      <div class="stage-host" ref={host} />
      {failed ? <p class="stage-failed paper">{t('shop.notDrawn')}</p> : null}
    </div>
  );
}

/** What is drawn, and where the same stands in words. */
function drawn({ book, bench }: Session, { aside, sheet }: Ui): string {
  const place = zoneName(book, bench.zone);
  const drawing =
    aside === null ? t('shop.stageLabel', { place }) : t(aside === 'CREAR' ? 'shop.stageRear' : 'shop.stageYard');
  const { number, title } = sheets.find((s) => s.id === sheet) ?? {};
  return number === undefined ? drawing : `${drawing} ${t('shop.stageSheet', { sheet: `${number} · ${title}` })}`;
}

function landing({ model }: Session, end: string): { point: string; colour: string } | undefined {
  const [id, side] = end.split('@');
  const wire = model.wires.get(id);
  return wire === undefined ? undefined : { point: side === 'from' ? wire.from : wire.to, colour: wire.colour };
}
