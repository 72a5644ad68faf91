/** The 5 W test lamp: a load between a clip and a tip. */

import { nodeOf, type World } from '../machine/index.ts';
import type { Change } from '../parts/index.ts';

/** Ohms when lit (book, tools: 29 Ω hot, 0.4 A at 12 V). */
export const LAMP_OHMS = 29;

export type Glow = 'dark' | 'glimmer' | 'dim' | 'bright';

/** How it lights, by volts across it. A 12 V filament glows red from about 2 V: common practice, no source. */
export function glowOf(volts: number): Glow {
  const v = Math.abs(volts);
  if (v < 2) return 'dark';
  if (v < 5) return 'glimmer';
  return v < 9.5 ? 'dim' : 'bright';
}

export function readLamp(world: World, tip: string, clip: string): Glow {
  return glowOf(world.volts(nodeOf(world.model, tip), nodeOf(world.model, clip)));
}

export function lampLoad(tip: string, clip: string): Change[] {
  return tip === clip ? [] : [{ kind: 'bridge', a: tip, b: clip, ohms: LAMP_OHMS }];
}
