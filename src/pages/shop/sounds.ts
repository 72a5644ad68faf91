/** What an action made to hear, handed to the sounds. Each has its words on the slip as well. */
import type { Record } from '../../job/index.ts';
import { play, type SoundName, setLoop, stopAll } from '../../sound/sounds.ts';
import { isRunning } from '../state/machine-view.ts';
import type { Session } from '../state/session.ts';
import { settings } from '../state/settings.ts';

export function startSounds(session: Session): () => void {
  const running = (): void => setLoop('running', settings.value.sound && isRunning(session));
  running();
  const stop = session.onRecord((record) => {
    if (settings.value.sound) for (const name of heard(record)) play(name);
    running();
  });
  return () => {
    stop();
    stopAll();
  };
}

function heard({ entry, seen }: Record): SoundName[] {
  const sounds: SoundName[] = [];
  for (const code of seen.codes) {
    if (code.startsWith('click:')) sounds.push('click');
    else if (code.startsWith('buzz:') || code === 'chatter') sounds.push('chatter');
    else if (code === 'clunk') sounds.push('clunk');
    else if (code === 'turns-slowly') sounds.push('crankSlow');
    else if (code === 'turns' && !seen.codes.includes('turns-slowly')) sounds.push('crank');
    else if (code === 'jack-fuse-blown') sounds.push('pop');
    else if (code === 'horn') sounds.push('horn');
  }
  if (seen.display?.beep === true) sounds.push('beep');
  const { do: kind } = entry.action;
  if (kind === 'unplug' || kind === 'plug') sounds.push('latch');
  if (kind === 'open' || kind === 'close') sounds.push('cover');
  return sounds;
}
