/** Exit status 0 for success, 1 for "the thing checked is not right", 2 for wrong use; and what is printed. */
import { describe, expect, test } from 'vitest';
import { attemptFile, fileWith, ohmyard } from './ohmyard.ts';

describe('wrong use is 2 and says so', () => {
  test.each([
    ['no command', []],
    ['an unknown command', ['repair']],
    ['check without a file', ['check']],
    ['grade without an attempt', ['grade']],
    ['a job that is not there', ['suspects', 'job-99']],
    ['an unknown option', ['check', '--loud', 'x.json']],
    ['a reading without leads', ['reading', 'job-05']],
    ['a control that is not there', ['reading', 'job-05', '--set', 'ignition=on', '--red', 'G1.+', '--black', 'G1.-']],
    ['a point that is not there', ['reading', 'job-05', '--red', 'X99.1', '--black', 'G1.-']],
    ['a meter that is not there', ['reading', 'job-05', '--meter', 'guess', '--red', 'G1.+', '--black', 'G1.-']],
  ])('%s', (_, args) => {
    const ran = ohmyard(...args);
    expect(ran.status).toBe(2);
    expect(ran.err + ran.out).not.toBe('');
    expect(ran.err).not.toMatch(/\n\s+at /);
  });
});

test.each([['--help'], ['netlist', '--help']])('help is asked for: %s %s', (...args) => {
  const ran = ohmyard(...args.filter((arg) => arg !== undefined));
  expect(ran.status).toBe(0);
  for (const command of ['check', 'reading', 'netlist', 'grade', 'suspects']) expect(ran.out).toContain(command);
});

describe('check', () => {
  test('our book and jobs: nothing wrong', () => {
    const ran = ohmyard('check', '--json', 'scenarios/machines/hobbin-45', 'scenarios/jobs/job-02.json');
    expect([ran.status, ran.err]).toEqual([0, '']);
    expect(JSON.parse(ran.out)).toEqual([]);
  });

  test('an array of problems with file, path, code, found and expected', () => {
    const job = fileWith('short.json', { machine: 'hobbin-45', id: 'short' });
    const text = fileWith('torn.json', '{"id": ');
    const ran = ohmyard('check', '--json', job, text, 'nowhere.json');
    expect(ran.status).toBe(1);
    const problems: Record<string, unknown>[] = JSON.parse(ran.out);
    for (const problem of problems) expect(Object.keys(problem)).toEqual(['file', 'path', 'code', 'found', 'expected']);
    expect(problems).toContainEqual({
      file: job,
      path: 'title',
      code: 'missing',
      found: 'nothing',
      expected: 'string',
    });
    expect(problems).toContainEqual(
      expect.objectContaining({ file: text, path: 'line 1, column 8', code: 'bad-json', expected: 'JSON' }),
    );
    expect(problems.at(-1)).toMatchObject({ file: 'nowhere.json', code: 'unreadable' });
  });

  test('without --json one line a problem, with the same words', () => {
    const job = fileWith('short.json', { machine: 'hobbin-45', id: 'short' });
    const ran = ohmyard('check', job);
    expect(ran.status).toBe(1);
    expect(ran.out.split('\n')).toContain(`${job}: title: missing: found nothing, expected string`);
  });

  test('an attempt that was tampered with', () => {
    const file = attemptFile('dear.json', 'job-02', (log) => {
      log.entries[1].tenths = 0;
    });
    const ran = ohmyard('check', '--json', file);
    expect(ran.status).toBe(1);
    expect(JSON.parse(ran.out)).toEqual([
      { file, path: 'entries[1].tenths', code: 'differs', found: '0', expected: '20' },
    ]);
  });
});

describe('grade', () => {
  test('a job done along its own way', () => {
    const file = attemptFile('good.json', 'job-02');
    const ran = ohmyard('grade', '--json', file);
    expect([ran.status, ran.err]).toEqual([0, '']);
    const grade = JSON.parse(ran.out);
    expect(grade).toMatchObject({ file, result: 'pass', solved: true, critical: false });
    expect(Object.keys(grade.criteria)).toEqual(['safety', 'order', 'proof', 'parts', 'time', 'closeOut']);
    for (const criterion of Object.values(grade.criteria))
      expect(criterion).toEqual({ points: expect.any(Number), of: expect.any(Number) });
  });

  test('a log that was tampered with is not graded, and its place is named', () => {
    const file = attemptFile('tampered.json', 'job-02', (log) => {
      log.entries[3].seen.codes = ['cluster-on'];
    });
    const ran = ohmyard('grade', file);
    expect([ran.status, ran.out]).toEqual([1, '']);
    expect(ran.err).toContain(`${file}: entries[3].seen: differs: found `);
  });

  test('an unknown action is not graded, and its place is named', () => {
    const file = attemptFile('unknown.json', 'job-02', (log) => {
      Object.assign(log.entries[2], { action: { do: 'teleport' } });
    });
    const ran = ohmyard('grade', file);
    expect([ran.status, ran.out]).toEqual([1, '']);
    expect(ran.err).toContain(`${file}: entries[2].action.do: not-allowed: found "teleport"`);
  });

  test('no JSON, no grade', () => {
    const file = fileWith('words.json', 'a good attempt');
    const ran = ohmyard('grade', file);
    expect(ran.status).toBe(1);
    expect(ran.err).toContain(`${file}: line 1, column 1: bad-json`);
  });
});

describe('suspects', () => {
  test('rows of target and share, the likeliest first, that add up to one', () => {
    const ran = ohmyard('suspects', 'job-02', '--json');
    expect([ran.status, ran.err]).toEqual([0, '']);
    const rows: { at: string; share: number }[] = JSON.parse(ran.out);
    expect(rows.map((r) => r.at)).toContain('S1');
    expect(rows.reduce((sum, r) => sum + r.share, 0)).toBeCloseTo(1, 9);
    expect(rows.map((r) => r.share)).toEqual(rows.map((r) => r.share).sort((a, b) => b - a));
  });

  test('after a log, what it left', () => {
    const file = attemptFile('left.json', 'job-02');
    const ran = ohmyard('suspects', 'job-02', file);
    expect(ran.status).toBe(0);
    expect(ran.out).toMatch(/^S1 +[5-9]\d\.\d %/);
  });
});
