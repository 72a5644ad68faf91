/** Says honestly what is being done while the grade is worked out. */
import { useEffect, useState } from 'preact/hooks';
import { useObservable } from '../state/observable.ts';
import type { Session } from '../state/session.ts';
import { t } from '../words/words.ts';
import { stage } from './grading.ts';

export function Working({ session }: { session: Session }) {
  const now = useObservable(stage);
  const [seconds, setSeconds] = useState(0);
  useEffect(() => {
    const ticking = setInterval(() => setSeconds((s) => s + 1), 1000);
    return () => clearInterval(ticking);
  }, []);
  const count = session.attempt.records.length;
  return (
    <div class="working">
      <p role="status">
        <b>{t('review.progress.title')}</b>{' '}
        {now === 'weigh' ? t('review.progress.weigh', { count }) : t('review.progress.replay')}
      </p>
      <p class="hint" aria-hidden="true">
        {t('review.progress.seconds', { count: seconds })}
      </p>
    </div>
  );
}
