/** The sheet of keys, and how a job goes. */
import { Dialog } from '../parts/dialog.tsx';
import { ui } from '../state/ui.ts';
import { t } from '../words/words.ts';

const KEYS = [
  ['H', 'keyList'],
  ['F', 'keyFilter'],
  ['W', 'keyWalk'],
  ['K', 'keyControls'],
  ['G', 'keyGeneral'],
  ['L', 'keySlip'],
  ['S', 'keySchematic'],
  ['M', 'keyManual'],
  ['C', 'keyClipboard'],
  ['1 – 6', 'keyTabs'],
  ['I', 'keyMeter'],
  ['E', 'keyRead'],
  ['R', 'keyRed'],
  ['B', 'keyBlack'],
  ['Y', 'keyYard'],
  ['+ − 0', 'keyZoom'],
  ['↑ ↓ ← →', 'keyArrows'],
  ['Esc', 'keyEscape'],
  ['?', 'keyHelp'],
] as const;

const WORK = ['work1', 'work2', 'work3', 'work4', 'work5'] as const;

export function Help() {
  return (
    <Dialog title={t('help.title')} onClose={() => ui.update({ dialog: null })}>
      <p>{t('help.intro')}</p>
      <p>{t('help.letters')}</p>
      <dl class="keys">
        {KEYS.map(([key, text]) => (
          <div key={key}>
            <dt>
              <kbd>{key}</kbd>
            </dt>
            <dd>{t(`help.${text}`)}</dd>
          </div>
        ))}
      </dl>
      <h3>{t('help.work')}</h3>
      <ol>
        {WORK.map((step) => (
          <li key={step}>{t(`help.${step}`)}</li>
        ))}
      </ol>
    </Dialog>
  );
}
