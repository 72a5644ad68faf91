/** The test lamp: a bulb in a handle. How bright it is stands beside it in words. */
import { shownOn } from '../state/reading.ts';
import type { Session } from '../state/session.ts';
import { glowWord } from '../words/seen.ts';
import { t } from '../words/words.ts';

export function LampFace({ session }: { session: Session }) {
  const glow = shownOn(session.attempt)?.display.text ?? null;
  return (
    <div class="lamp-face">
      <svg class="art lamp-art" viewBox="0 0 200 60" aria-hidden="true">
        <path class="d s1" d="M2 30L48 26V34Z" />
        <path class="d p2" d="M46 20H70V40H46Z" />
        <path class="d b2" d="M70 12H150Q158 12 158 20V40Q158 48 150 48H70Z" />
        <rect class="d a2" x="80" y="18" width="58" height="24" rx="10" />
        <circle class={`d bulb bulb-${glow ?? 'dark'}`} cx="109" cy="30" r="9" />
        <path class="o lead-black-line" d="M158 30Q182 30 198 46" />
      </svg>
      <p class="lamp-word">{glow === null ? t('meter.dash') : glowWord(glow)}</p>
    </div>
  );
}
