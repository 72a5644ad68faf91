/** The plain list of everything that the drawing offers, for keyboard and screen reader and for whoever likes lists. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { ActButton } from '../parts/act-button.tsx';
import { useArrows } from '../parts/arrows.ts';
import { Section } from '../parts/section.tsx';
import { moveOn } from '../state/move-on.ts';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { ui } from '../state/ui.ts';
import { actionKey } from '../words/actions.ts';
import { partName, pointName, zoneName } from '../words/names.ts';
import { t } from '../words/words.ts';
import { Controls } from './controls.tsx';
import { GroupEntry } from './group.tsx';
import { coversHere, type Group, generalHere, groupsHere, walksFrom } from './offers.ts';
import { ProofDue, proofIsDue } from './proof-due.tsx';
import { SeenNow } from './seen-now.tsx';
import { VERIFY_LINE, VerifyLine } from './verify-line.tsx';

/** While it is put away for the schematic it keeps what is unfolded in it, and who stood where. */
export function Here({ session, away }: { session: Session; away: boolean }) {
  useObservable(session.view);
  const { selected } = useObservable(ui);
  const { book, bench } = session;
  const [filter, setFilter] = useState('');
  const place = zoneName(book, bench.zone);
  const body = useRef<HTMLDivElement>(null);
  // Another place is another list.
  useEffect(() => {
    body.current?.scrollTo(0, 0);
    setFilter('');
  }, [bench.zone]);
  const due = proofIsDue(session);
  // What comes up at the head pushes down the rest: whoever stands there stays in view.
  useEffect(() => {
    const at = document.activeElement;
    if (at !== null && body.current?.contains(at)) at.scrollIntoView({ block: 'nearest' });
  }, [due]);
  return (
    <aside class="here paper" id="here" aria-label={t('here.title', { place })} hidden={away}>
      <header class="panel-head">
        <h2 tabIndex={-1} id="here-title">
          {t('here.title', { place })}
        </h2>
        <button type="button" class="plain" aria-label={t('here.close')} onClick={() => ui.update({ here: false })}>
          ✕
        </button>
      </header>
      <div class="panel-body" ref={body}>
        {due ? <ProofDue session={session} /> : null}
        <Acts
          key={bench.zone}
          session={session}
          id="here-go"
          title={t('here.go')}
          actions={walksFrom(session)}
          folded
        />
        <Acts session={session} id="here-covers" title={t('here.covers')} actions={coversHere(session)} />
        <Groups session={session} filter={filter} setFilter={setFilter} selected={selected} />
        <Controls session={session} />
        <Acts session={session} id="here-general" title={t('here.general')} actions={generalHere(session)}>
          {due ? null : <VerifyLine session={session} />}
        </Acts>
        <SeenNow session={session} />
      </div>
    </aside>
  );
}

interface ActsProps {
  session: Session;
  id: string;
  title: string;
  actions: ReturnType<typeof walksFrom>;
  folded?: boolean;
  children?: ComponentChildren;
}

function Acts({ session, id, title, actions, folded = false, children }: ActsProps) {
  if (actions.length === 0) return null;
  return (
    <Section id={id} title={title} folded={folded}>
      <ActList session={session} actions={actions} />
      {children}
    </Section>
  );
}

function ActList({ session, actions }: Pick<ActsProps, 'session' | 'actions'>) {
  const ref = useRef<HTMLDivElement>(null);
  useArrows(ref);
  return (
    <div class="acts" ref={ref}>
      {actions.map((action) => (
        <ActButton
          key={actionKey(action)}
          session={session}
          action={action}
          describedBy={action.do === 'verify' && !proofIsDue(session) ? VERIFY_LINE : undefined}
        />
      ))}
    </div>
  );
}

interface GroupsProps {
  session: Session;
  filter: string;
  setFilter: (text: string) => void;
  selected: string | null;
}

function Groups({ session, filter, setFilter, selected }: GroupsProps) {
  const ref = useRef<HTMLUListElement>(null);
  const [open, setOpen] = useState<string[]>([]);
  /** The filter leaves out what was pointed at. */
  const hidden = useRef(false);
  const { picks } = useObservable(ui);
  const { zone } = session.bench;
  useArrows(ref);
  useEffect(() => setOpen([]), [zone]);
  useEffect(() => {
    if (selected === null) return;
    setOpen((list) => (list.includes(selected) ? list : [...list, selected]));
    if (picks > 0 && hidden.current) setFilter('');
    // The entry is unfolded by the next frame but one.
    requestAnimationFrame(() => requestAnimationFrame(() => bringUp(ref.current, selected)));
  }, [selected, picks]);
  const all = groupsHere(session);
  const shown = all.filter((group) => matches(session, group, filter));
  hidden.current = selected !== null && !shown.some((group) => group.id === selected);
  const toggle = (id: string): void => {
    // What was said of another part is over.
    if (!open.includes(id)) moveOn(session);
    ui.update({ selected: null });
    setOpen((list) => (list.includes(id) ? list.filter((x) => x !== id) : [...list, id]));
  };
  return (
    <Section id="here-parts" title={t('here.parts')} reveal={picks}>
      {all.length > 4 ? <Filter value={filter} onChange={setFilter} /> : null}
      {all.length === 0 ? <p class="hint">{t('here.none')}</p> : null}
      <p class={all.length > 0 && shown.length === 0 ? 'hint' : 'unseen'} role="status">
        {filter === '' ? '' : t('here.found', { count: shown.length })}
      </p>
      <ul class="groups" ref={ref}>
        {shown.map((group) => (
          <GroupEntry
            key={group.id}
            session={session}
            group={group}
            open={open.includes(group.id)}
            onToggle={() => toggle(group.id)}
          />
        ))}
      </ul>
    </Section>
  );
}

/** All of the entry, or where that is taller than the list its head. */
function bringUp(list: HTMLElement | null, id: string): void {
  const entry = list?.querySelector<HTMLElement>(`[data-group="${CSS.escape(id)}"]`);
  const room = list?.closest('.panel-body')?.clientHeight ?? 0;
  entry?.scrollIntoView({ block: entry.offsetHeight > room ? 'start' : 'nearest' });
}

function Filter({ value, onChange }: { value: string; onChange: (text: string) => void }) {
  return (
    <label class="field">
      <span>{t('here.filter')}</span>
      <input
        id="here-filter"
        type="search"
        value={value}
        placeholder={t('here.filterHint')}
        onInput={(event) => onChange(event.currentTarget.value)}
      />
    </label>
  );
}

function matches({ book, model }: Session, group: Group, filter: string): boolean {
  const text = filter.trim().toLowerCase();
  if (text === '') return true;
  const names = [partName(book, group.id), ...group.points.map((p) => pointName(model, p))];
  return (
    names.some((name) => name.toLowerCase().includes(text)) ||
    group.targets.some((x) => x.target.toLowerCase().includes(text))
  );
}
