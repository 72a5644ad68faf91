/** Finds a part, a wire or a pin by number or name. */
import { useState } from 'preact/hooks';
import type { Model } from '../../machine/index.ts';
import { t } from '../words/words.ts';
import { findTargets } from './targets.ts';

interface Props {
  model: Model;
  label: string;
  hint: string;
  action: string;
  onPick: (target: string) => void;
}

export function TargetSearch({ model, label, hint, action, onPick }: Props) {
  const [text, setText] = useState('');
  const found = findTargets(model, text);
  return (
    <div class="target-search">
      <label class="field">
        <span>{label}</span>
        <input type="search" value={text} placeholder={hint} onInput={(event) => setText(event.currentTarget.value)} />
      </label>
      {text.trim() !== '' && found.length === 0 ? <p class="hint">{t('here.noMatch')}</p> : null}
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
