/** Finds a part, a wire or a pin by number or name. */
import { useState } from 'preact/hooks';
import type { Model } from '../../machine/index.ts';
import { targetName } from '../words/names.ts';
import { sentence, t } from '../words/words.ts';
import { findTargets } from './targets.ts';

interface Props {
  model: Model;
  label: string;
  hint: string;
  action: string;
  onPick: (target: string) => void;
  /** Offered before anything is typed. */
  near?: string[];
}

export function TargetSearch({ model, label, hint, action, onPick, near = [] }: Props) {
  const [text, setText] = useState('');
  const found =
    text.trim() === ''
      ? near.map((target) => ({ target, name: sentence(targetName(model, target)) }))
      : findTargets(model, text);
  return (
    <div class="target-search">
      <label class="field">
        <span>{label}</span>
        <input type="search" value={text} placeholder={hint} onInput={(event) => setText(event.currentTarget.value)} />
      </label>
      <p class={text.trim() !== '' && found.length === 0 ? 'hint' : 'unseen'} role="status">
        {text.trim() === '' ? '' : t('here.found', { count: found.length })}
      </p>
      <ul class="found">
        {found.map(({ target, name }) => (
          <li key={target}>
            <button
              type="button"
              onClick={() => {
                onPick(target);
                setText('');
              }}
            >
              <span>{name}</span>
              <span class="act-cost">{action}</span>
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}
