/** The service manual: chapters, and a search over all of them. */
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { Session } from '../state/session.ts';
import { ui } from '../state/ui.ts';
import { t } from '../words/words.ts';
import { type ChapterId, chapters, type Leaf } from './pages.ts';
import { marked, patternsOf, searchManual } from './search.ts';

/** Longer lists are cut, with a word on how to narrow them. */
const MOST_LEAVES = 24;

export function Manual({ session }: { session: Session }) {
  const [chapter, setChapter] = useState<ChapterId>('howItWorks');
  const [text, setText] = useState('');
  const { model } = session;
  const body = useRef<HTMLElement>(null);
  // What is found is read from its beginning.
  useLayoutEffect(() => body.current?.scrollTo(0, 0), [text, chapter]);
  const searching = text.trim().length > 1;
  const all = searching ? searchManual(model, text) : (chapters(model).find((c) => c.id === chapter)?.leaves ?? []);
  const patterns = searching ? patternsOf(text) : [];
  const leaves = searching ? all.slice(0, MOST_LEAVES) : all;
  return (
    <aside class="manual paper" aria-label={t('manual.title')}>
      <header class="panel-head">
        <h2>{t('manual.title')}</h2>
        <button type="button" class="plain" aria-label={t('app.close')} onClick={() => ui.update({ manual: false })}>
          ✕
        </button>
      </header>
      <div class="manual-top">
        <label class="field">
          <span>{t('manual.search')}</span>
          <input
            id="manual-search"
            type="search"
            value={text}
            placeholder={t('manual.searchHint')}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <label class="field">
          <span>{t('manual.chapters')}</span>
          <select
            value={chapter}
            onChange={(event) => {
              setChapter(event.currentTarget.value as ChapterId);
              setText('');
            }}
          >
            {chapters(model).map(({ id }) => (
              <option key={id} value={id}>
                {t(`manual.${id}`)}
              </option>
            ))}
          </select>
        </label>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and must do so by keyboard. */}
      <section class="panel-body" tabIndex={0} aria-label={t('manual.title')} ref={body}>
        {/* Always there: what comes together with its words is not spoken. */}
        <p class={searching ? '' : 'unseen'} role="status">
          {searching ? hits(all.length) : ''}
        </p>
        {leaves.map((leaf) => (
          <LeafView key={leaf.id} leaf={leaf} patterns={patterns} />
        ))}
        {all.length > leaves.length ? <p class="hint">{t('manual.more', { count: leaves.length })}</p> : null}
      </section>
    </aside>
  );
}

const hits = (count: number): string => (count === 0 ? t('manual.nothing') : t('manual.results', { count }));

type Patterns = readonly RegExp[];

function Marked({ text, patterns }: { text: string; patterns: Patterns }) {
  if (patterns.length === 0) return <>{text}</>;
  return (
    <>
      {marked(text, patterns).map((stretch, i) =>
        stretch.hit ? <mark key={`${i}${stretch.text}`}>{stretch.text}</mark> : stretch.text,
      )}
    </>
  );
}

function LeafView({ leaf, patterns }: { leaf: Leaf; patterns: Patterns }) {
  return (
    <article class="leaf">
      <h3>
        <Marked text={leaf.title} patterns={patterns} />
      </h3>
      {leaf.text?.split('\n').map((line) => (
        <p key={line}>
          <Marked text={line} patterns={patterns} />
        </p>
      ))}
      {leaf.rows === undefined || leaf.head === undefined ? null : (
        <Table head={leaf.head} rows={leaf.rows} patterns={patterns} />
      )}
    </article>
  );
}

function Table({ head, rows, patterns }: { head: string[]; rows: string[][]; patterns: Patterns }) {
  return (
    <div class="table-scroll">
      <table>
        <thead>
          <tr>
            {head.map((name) => (
              <th key={name} scope="col">
                {name}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.join('|')}>
              {row.map((cell, i) =>
                i === 0 ? (
                  <th key="first" scope="row">
                    <Marked text={cell} patterns={patterns} />
                  </th>
                ) : (
                  <td key={head[i]}>
                    <Marked text={cell} patterns={patterns} />
                  </td>
                ),
              )}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
