/** Over the drawing: closer and wider, the whole machine, the name of what the pointer is on. */
import { lookAt } from '../state/move-on.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { ui } from '../state/ui.ts';
import { partName, pointName, zoneName } from '../words/names.ts';
import { sealedAt, sealOf } from '../words/sealed.ts';
import { sentence, t } from '../words/words.ts';
import { type Hovered, hovered } from './stage-events.ts';
import { onStage } from './stage-pane.tsx';

export function StageTools({ session }: { session: Session }) {
  const { aside } = useObservable(ui);
  useObservable(session.view);
  const place = zoneName(session.book, session.bench.zone);
  return (
    <div class="stage-tools">
      <div class="tool-row">
        <button type="button" class="plain" onClick={() => lookAt(session, aside === null ? 'YARD' : null)}>
          {aside === null ? t('shop.yard') : t('shop.yardBack', { place })}
        </button>
        {aside === 'YARD' || aside === 'YARD-RIGHT' ? (
          <button type="button" class="plain" onClick={() => lookAt(session, aside === 'YARD' ? 'YARD-RIGHT' : 'YARD')}>
            {t('shop.yardOther')}
          </button>
        ) : null}
        <PanelBack session={session} />
        <Zoom />
      </div>
    </div>
  );
}

/** The center panel, once off, can be turned over: S2, S22 and the panel's switches have their terminals there. */
function PanelBack({ session }: { session: Session }) {
  const { aside } = useObservable(ui);
  const { zone, opened } = session.bench;
  const turnable = ['CDASH', 'BDASH'].includes(zone) && (opened.includes('AC2') || opened.includes('AC11'));
  if (!turnable) return null;
  return (
    <button type="button" class="plain" onClick={() => lookAt(session, aside === 'CREAR' ? null : 'CREAR')}>
      {aside === 'CREAR' ? t('shop.panelFront') : t('shop.panelBack')}
    </button>
  );
}

function Zoom() {
  const zoom = (step: 1 | -1 | 0) => () => onStage.current?.zoom(step);
  return (
    <span class="zoom">
      <button type="button" class="plain" aria-label={t('shop.wider')} onClick={zoom(-1)}>
        −
      </button>
      <button type="button" class="plain" onClick={zoom(0)}>
        {t('shop.whole')}
      </button>
      <button type="button" class="plain" aria-label={t('shop.closer')} onClick={zoom(1)}>
        +
      </button>
    </span>
  );
}

export function HoverName({ session }: { session: Session }) {
  const what = useObservable(hovered);
  const name = hoverText(session, what);
  return name === null ? null : (
    <p class="hover-name" aria-hidden="true">
      {name}
    </p>
  );
}

/** The name, and where it is sealed, why it can't be touched. */
function hoverText(session: Session, what: Hovered): string | null {
  const { model, book, bench } = session;
  if (what === null) return null;
  if (what.point !== undefined) {
    const plug = sealOf(session, what.point);
    const name = sentence(pointName(model, what.point));
    return plug === null ? name : t('here.sealedShort', { name });
  }
  if (what.part !== undefined) {
    const here = book.connectors.some((c) => c.id === what.part && c.zone === bench.zone);
    const { sealed, some } = here ? sealedAt(session, what.part) : { sealed: [], some: true };
    const name = partName(book, what.part);
    return sealed.length > 0 && !some ? t('here.sealedShort', { name }) : name;
  }
  return what.zone === undefined ? null : zoneName(book, what.zone);
}
