/** Where the red lead is plugged in. */
import type { Session } from '../state/session.ts';
import { t } from '../words/words.ts';

export function Jacks({ session }: { session: Session }) {
  const { redJack } = session.bench;
  const jack = (red: 'volts' | 'amps', label: string) => (
    <button
      type="button"
      class={`jack jack-${red}`}
      aria-pressed={redJack === red}
      aria-label={`${t('meter.jack')} ${label}`}
      onClick={() => (redJack === red ? undefined : session.act({ do: 'jack', red }))}
    >
      <span class="jack-hole" aria-hidden="true" />
      {label}
    </button>
  );
  return (
    <fieldset class="jacks">
      <legend>{t('meter.jack')}</legend>
      {jack('volts', t('meter.jackVolts'))}
      {jack('amps', t('meter.jackAmps'))}
    </fieldset>
  );
}
