import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

const broken = (id: string, change: Record<string, unknown>) => {
  const book = new Edit();
  Object.assign(book.record('precautions.json', 'precautions', id), change);
  return { problems: book.problems(), path: book.path('precautions.json', 'precautions', id) };
};

test('a precaution that holds only while one stands that nobody told', () => {
  const { problems, path } = broken('keyOut', { while: ['keyAway'] });
  expect(problems).toEqual([
    {
      file: 'precautions.json',
      path: `${path}.while[0]`,
      code: 'unknown-precaution',
      found: 'keyAway',
      expected: 'a precaution of this book',
    },
  ]);
});

test('a precaution that holds only while another one is ticked', () => {
  const { problems, path } = broken('keyOut', { while: ['chocks'] });
  expect(problems).toMatchObject([{ path: `${path}.while[0]`, code: 'not-allowed', found: 'chocks' }]);
});

test('a precaution that the machine shows needs nothing to hold it', () => {
  const { problems, path } = broken('parkBrake', { while: ['keyOff'] });
  expect(problems).toMatchObject([{ path: `${path}.while`, code: 'two-ways' }]);
});

test('a check at something that nobody can work on', () => {
  const book = new Edit();
  book.record('checks.json', 'checks', 'stud-negative').at = ['101Z@from'];
  expect(book.problems()).toMatchObject([{ file: 'checks.json', code: 'unknown-target', found: '101Z@from' }]);
});
