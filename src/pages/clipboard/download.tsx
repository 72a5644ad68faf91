/** The log as a file. */
import { useEffect, useState } from 'preact/hooks';
import { logText } from '../../storage/log-file.ts';
import type { Session } from '../state/session.ts';
import { t } from '../words/words.ts';

export function Download({ session }: { session: Session }) {
  const { log } = session.attempt;
  const [url, setUrl] = useState('');
  const count = log.entries.length;
  // The log grows in place; its length says that it did.
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([logText(log)], { type: 'application/json' }));
    setUrl(made);
    return () => URL.revokeObjectURL(made);
  }, [log, count]);
  return (
    <a class="download" href={url} download={`${session.job.id}-log.json`}>
      {t('clip.download')}
    </a>
  );
}
