/** Reads a log file in, plays it again and says whether it comes out the same. */
import { useState } from 'preact/hooks';
import { type Attempt, type Difference, replay } from '../../job/index.ts';
import { readLog } from '../../storage/log-file.ts';
import { showLog } from '../debrief/from-log.ts';
import { catalog, jobById } from '../state/catalog.ts';
import { t } from '../words/words.ts';

type Result =
  | { kind: 'bad'; text: string }
  | { kind: 'played'; count: number; attempt: Attempt; differences: Difference[] };

/** More differences than these tell nothing new. */
const MOST = 12;

export function ReadBack() {
  const [result, setResult] = useState<Result | null>(null);
  const read = async (file: File | undefined): Promise<void> => {
    if (file !== undefined) setResult(judge(file.name, await file.text()));
  };
  return (
    <section class="read-back" aria-labelledby="read-back-title">
      <h2 id="read-back-title">{t('board.replayTitle')}</h2>
      <p>{t('board.replayText')}</p>
      <label class="file">
        {t('board.replayButton')}
        <input
          type="file"
          accept=".json,application/json"
          onChange={(event) => void read(event.currentTarget.files?.[0])}
        />
      </label>
      <div role="status">{result === null ? null : <Verdict result={result} />}</div>
    </section>
  );
}

function judge(file: string, text: string): Result {
  const read = readLog(file, text);
  if (!read.ok) {
    const [{ path, found, expected }] = read.problems;
    return { kind: 'bad', text: t('board.replayBad', { path, found, expected }) };
  }
  const job = jobById(read.log.header.jobId);
  if (job === undefined) return { kind: 'bad', text: t('board.replayNoJob', { job: read.log.header.jobId }) };
  const { attempt, differences } = replay(catalog().model, job, read.log);
  return { kind: 'played', count: read.log.entries.length, attempt, differences };
}

function Verdict({ result }: { result: Result }) {
  if (result.kind === 'bad') return <p class="warn">{result.text}</p>;
  const { count, attempt, differences } = result;
  return (
    <>
      <Comparison count={count} differences={differences} />
      {attempt.phase === 'ended' ? (
        <button type="button" class="plain" onClick={() => showLog(attempt, differences.length > 0)}>
          {t('board.replayShow')}
        </button>
      ) : null}
    </>
  );
}

function Comparison({ count, differences }: { count: number; differences: Difference[] }) {
  if (differences.length === 0) return <p class="all-clear">{t('board.replaySame', { count })}</p>;
  return (
    <>
      <p class="warn">{t('board.replayDiffers', { count: differences.length })}</p>
      <ul>
        {differences.slice(0, MOST).map(({ path, found, expected }) => (
          <li key={path}>{t('board.replayRow', { path, found, expected })}</li>
        ))}
      </ul>
    </>
  );
}
