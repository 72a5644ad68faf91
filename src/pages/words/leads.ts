/** The two leads by the names that they have on the instrument in hand. */

import { type MeterFunction, rangesOf } from '../../instruments/index.ts';
import type { Lead } from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { t } from './words.ts';

export function leadWord({ bench }: Pick<Session, 'bench'>, lead: Lead): string {
  if (bench.instrument === 'lamp') return lead === 'red' ? t('act.tip') : t('act.clip');
  return lead === 'red' ? t('act.red') : t('act.black');
}

/** In a sentence: `red lead`, `tip of the test lamp`. */
export function leadName({ bench }: Pick<Session, 'bench'>, lead: Lead): string {
  if (bench.instrument === 'lamp') return t(lead === 'red' ? 'meter.tipName' : 'meter.clipName');
  return t(lead === 'red' ? 'meter.redName' : 'meter.blackName');
}

/** `Range: automatic`, `Range: 60 V`. */
export function rangeWord(dial: MeterFunction, range: number | null): string {
  const name = range === null ? undefined : rangesOf(dial)[range];
  return name === undefined ? t('meter.rangeAuto') : t('meter.rangeAt', { range: name });
}
