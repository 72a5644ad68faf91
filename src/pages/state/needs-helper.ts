/** Precautions that a helper keeps: without one they can't be in place. */
import { helperIsThere } from '../../job/index.ts';
import type { PrecautionSpec } from '../../machine/index.ts';
import type { Session } from './session.ts';

export const lacksHelper = ({ bench, attempt }: Session, { needsHelper }: PrecautionSpec): boolean =>
  needsHelper === true && !helperIsThere(bench, attempt.timeMs);
