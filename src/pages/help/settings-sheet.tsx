/** What a student can set for this browser. */
import { Dialog } from '../parts/dialog.tsx';
import { useObservable } from '../state/observable.ts';
import { changeSettings, settings } from '../state/settings.ts';
import { ui } from '../state/ui.ts';
import { t } from '../words/words.ts';

export function SettingsSheet() {
  const now = useObservable(settings);
  return (
    <Dialog title={t('settings.title')} onClose={() => ui.update({ dialog: null })}>
      <label class="field">
        <span>{t('settings.theme')}</span>
        <select value={now.theme} onChange={(event) => changeSettings({ theme: themeOf(event.currentTarget.value) })}>
          <option value="system">{t('settings.themeSystem')}</option>
          <option value="light">{t('settings.themeLight')}</option>
          <option value="dark">{t('settings.themeDark')}</option>
        </select>
      </label>
      <label class="field">
        <span>{t('settings.motion')}</span>
        <select
          value={now.motion}
          onChange={(event) => changeSettings({ motion: event.currentTarget.value === 'less' ? 'less' : 'system' })}
        >
          <option value="system">{t('settings.motionSystem')}</option>
          <option value="less">{t('settings.motionLess')}</option>
        </select>
      </label>
      <label class="field">
        <span>{t('settings.currency')}</span>
        <input
          type="text"
          maxLength={4}
          value={now.currency}
          onInput={(event) => changeSettings({ currency: event.currentTarget.value })}
        />
      </label>
      <Check label={t('settings.sound')} on={now.sound} onChange={(sound) => changeSettings({ sound })} />
      <Check
        label={t('settings.letterKeys')}
        on={now.letterKeys}
        onChange={(letterKeys) => changeSettings({ letterKeys })}
      />
      <Check label={t('meter.auto')} on={now.autoRead} onChange={(autoRead) => changeSettings({ autoRead })} />
    </Dialog>
  );
}

const themeOf = (value: string) => (value === 'light' || value === 'dark' ? value : 'system');

function Check({ label, on, onChange }: { label: string; on: boolean; onChange: (on: boolean) => void }) {
  return (
    <label class="check">
      <input type="checkbox" checked={on} onChange={(event) => onChange(event.currentTarget.checked)} />
      {label}
    </label>
  );
}
