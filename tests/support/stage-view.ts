/** A stage on which nothing is open, off, lit or in hand. */
import type { StageView } from '../../src/game/view.ts';

export const bareView = (place: string): StageView => ({
  place,
  opened: [],
  pulled: [],
  unplugged: [],
  lifted: [],
  blown: [],
  controls: {},
  lamps: {},
  chocks: false,
  cranking: false,
  running: false,
  leads: { red: null, black: null },
  leadInHand: null,
  theme: 'light',
  reducedMotion: false,
});
