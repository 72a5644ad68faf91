/** The one door to Howler. Sound comes from what happened and never decides anything; without it all goes on. */
import { Howl, Howler } from 'howler';
import { beep, chatter, click, clunk, cover, cranking, horn, idling, latch, pop, wav } from './synthesis.ts';

const MAKERS = {
  click: () => wav(click(), 0.08),
  clunk: () => wav(clunk(), 0.3),
  chatter: () => wav(chatter(), 1.2),
  crank: () => wav(cranking(230), 1.5),
  crankSlow: () => wav(cranking(110), 1.5),
  running: () => wav(idling(), 1),
  beep: () => wav(beep(), 0.4),
  horn: () => wav(horn(), 0.6),
  pop: () => wav(pop(), 0.2),
  latch: () => wav(latch(), 0.12),
  cover: () => wav(cover(), 0.35),
} as const;

export type SoundName = keyof typeof MAKERS;

const made = new Map<SoundName, Howl>();

function sound(name: SoundName): Howl {
  const known = made.get(name);
  if (known !== undefined) return known;
  // After half a minute of silence Howler would fall asleep and may stay so on some phones.
  Howler.autoSuspend = false;
  const howl = new Howl({
    src: [MAKERS[name]()],
    format: ['wav'],
    volume: name === 'running' ? 0.25 : 0.6,
    loop: name === 'running',
  });
  made.set(name, howl);
  return howl;
}

export function play(name: SoundName): void {
  try {
    sound(name).play();
  } catch {
    // A browser without audio works on in silence.
  }
}

export function setLoop(name: SoundName, on: boolean): void {
  const known = made.get(name);
  if (on && known?.playing() !== true) play(name);
  if (!on) known?.stop();
}

export function stopAll(): void {
  for (const howl of made.values()) howl.stop();
}
