/** A part or plug of this place: its points, what can be done to it, its wires and repairs. */
import { useState } from 'preact/hooks';
import { ActButton } from '../parts/act-button.tsx';
import type { Session } from '../state/session.ts';
import { actionKey } from '../words/actions.ts';
import { localName, partName, targetName, wiresText } from '../words/names.ts';
import { sealText } from '../words/sealed.ts';
import { sentence, t } from '../words/words.ts';
import type { Group } from './offers.ts';
import { PointRow } from './point-row.tsx';

interface Props {
  session: Session;
  group: Group;
  open: boolean;
  onToggle: () => void;
}

export function GroupEntry({ session, group, open, onToggle }: Props) {
  const { book } = session;
  return (
    <li class="group" data-group={group.id}>
      <button type="button" class="group-head" aria-expanded={open} data-rowbox onClick={onToggle}>
        <span class="group-name">{partName(book, group.id)}</span>
        <span class="group-tags">{tags(session, group).join(' · ')}</span>
      </button>
      {open ? <GroupBody session={session} group={group} /> : null}
    </li>
  );
}

function GroupBody({ session, group }: { session: Session; group: Group }) {
  const [deeper, setDeeper] = useState(false);
  const marked = session.bench.marked.includes(group.id);
  return (
    <div class="group-body">
      {group.points.length > 0 ? (
        <ul class="points" aria-label={t('here.points')}>
          {group.points.map((point) => (
            <PointRow key={point} session={session} point={point} within />
          ))}
        </ul>
      ) : null}
      {group.sealed.length > 0 ? <Sealed session={session} group={group} /> : null}
      <div class="acts acts-two">
        {group.work.map((action) => (
          <ActButton key={actionKey(action)} session={session} action={action} kind="work" short />
        ))}
        <ActButton session={session} action={{ do: 'mark', target: group.id, suspect: !marked }} short />
      </div>
      {group.repairs.length + group.targets.length > 0 ? (
        <>
          <button type="button" class="deeper" aria-expanded={deeper} onClick={() => setDeeper(!deeper)}>
            {group.targets.length > 0 ? t('here.wires') : t('here.repairs')}
          </button>
          {deeper ? <Deeper session={session} group={group} /> : null}
        </>
      ) : null}
    </div>
  );
}

/** Pins under their seals: named, with the reason why no lead can be set on them. */
function Sealed({ session, group }: { session: Session; group: Group }) {
  const [open, setOpen] = useState(false);
  const { model } = session;
  return (
    <>
      <p class="hint">{sealText(session, group.id)}</p>
      <button type="button" class="deeper" aria-expanded={open} onClick={() => setOpen(!open)}>
        {t('here.sealedPins', { count: group.sealed.length })}
      </button>
      {open ? (
        <ul class="points sealed-points">
          {group.sealed.map((point) => (
            <li key={point} class="point-row">
              <span class="point-name">
                <b>{sentence(localName(model, point))}</b>
                <span class="point-wire">{wiresText(model, point)}</span>
              </span>
              <span class="group-tags">{t('here.sealed')}</span>
            </li>
          ))}
        </ul>
      ) : null}
    </>
  );
}

function Deeper({ session, group }: { session: Session; group: Group }) {
  return (
    <div class="deeper-body">
      {group.repairs.map((action) => (
        <ActButton key={actionKey(action)} session={session} action={action} kind="repair" short />
      ))}
      {group.targets.map(({ target, actions }) => (
        <TargetEntry key={target} session={session} target={target} actions={actions} />
      ))}
    </div>
  );
}

function TargetEntry({ session, target, actions }: { session: Session } & Group['targets'][number]) {
  const [open, setOpen] = useState(false);
  const marked = session.bench.marked.includes(target);
  return (
    <div class="target">
      <button type="button" class="target-head" aria-expanded={open} onClick={() => setOpen(!open)}>
        {sentence(targetName(session.model, target))}
      </button>
      {open ? (
        <div class="acts acts-two">
          {actions.map((action) => (
            <ActButton
              key={actionKey(action)}
              session={session}
              action={action}
              kind={action.do === 'repair' ? 'repair' : 'work'}
              short
            />
          ))}
          <ActButton session={session} action={{ do: 'mark', target, suspect: !marked }} short />
        </div>
      ) : null}
    </div>
  );
}

function tags({ bench }: Session, group: Group): string[] {
  const { red, black } = bench.leads;
  const off = bench.lifted.filter((end) => group.work.some((a) => a.do === 'land' && a.end === end)).length;
  return [
    bench.pulled.includes(group.id) ? t('here.outOf') : '',
    bench.unplugged.includes(group.id) ? t('here.unplugged') : '',
    group.sealed.length > 0 && group.points.length === 0 ? t('here.sealed') : '',
    off > 0 ? t('here.lifted', { count: off }) : '',
    group.points.some((p) => p === red || p === black) ? t('here.leadHere') : '',
    bench.marked.includes(group.id) ? t('here.suspect') : '',
  ].filter((tag) => tag !== '');
}
