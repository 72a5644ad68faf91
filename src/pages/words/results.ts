/** Results of attempts in words: `Pass, 84 points`. */
import i18next from 'i18next';
import type { StoredResult } from '../../storage/attempts.ts';
import type { JobRecord } from '../state/job-record.ts';
import { t } from './words.ts';

export const resultText = ({ result, points }: StoredResult): string =>
  t('board.result', { result: t(`debrief.${result}`), points: Math.floor(points * 10) / 10 });

/** How often it was tried, and when it was last closed; the last result where a newer attempt is under way. */
export function recordText({ count, latest, closed }: JobRecord): string {
  const attempts = t('board.attempts', { count });
  if (closed === null) return attempts;
  const date = new Intl.DateTimeFormat(i18next.language, { dateStyle: 'medium' }).format(
    new Date(closed.closedAt ?? closed.takenAt),
  );
  const before = closed !== latest && closed.result !== undefined ? [resultText(closed.result)] : [];
  const pending = closed.result === undefined ? [t('board.noResult')] : [];
  return [...before, ...pending, date, attempts].join(' · ');
}
