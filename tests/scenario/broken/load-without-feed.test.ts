import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('lamps behind a contact that never closes', () => {
  const book = new Edit();
  book.element('parts-switches.json', 'S20', 'side').law = { kind: 'resistance', ohms: 1_000_000 };
  expect(book.problems()).toContainEqual({
    file: 'parts-lamps.json',
    path: `${book.elementPath('parts-lamps.json', 'E9', 'fil58')}`,
    code: 'load-without-feed',
    found: 'E9.fil58, E9.58 to E9.31',
    expected: 'a way from the battery',
  });
});
