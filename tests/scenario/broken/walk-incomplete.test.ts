import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('no minutes for a walk', () => {
  const book = new Edit();
  delete (book.file('shop.json').costs as { walk: Record<string, Record<string, number>> }).walk.CDASH.ROOF;
  expect(book.problems()).toContainEqual({
    file: 'shop.json',
    path: 'costs.walk.CDASH',
    code: 'walk-incomplete',
    found: 'no minutes to ROOF',
    expected: 'minutes to every other zone',
  });
});
