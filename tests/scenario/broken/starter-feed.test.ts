import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a starter cable that is too thin', () => {
  const book = new Edit();
  Object.assign(book.wire('102A'), { mm2: 35, ohms: 0.0009, ampacityAmps: 160 });
  expect(book.problems()).toContainEqual({
    file: 'parts-power.json',
    path: `${book.elementPath('parts-power.json', 'M1', 'contact')}.a`,
    code: 'starter-feed',
    found: 'M1.30',
    expected: 'an unfused cable of 50 mm² or more from the battery',
  });
});
