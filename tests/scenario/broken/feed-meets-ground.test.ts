import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a way from plus to minus without a load', () => {
  const book = new Edit();
  Object.assign(book.element('parts-lamps.json', 'E11', 'fil+'), { law: { kind: 'contact', ohms: 0.01 }, load: false });
  expect(book.problems()).toContainEqual({
    file: 'parts-a1.json',
    path: 'parts',
    code: 'feed-meets-ground',
    found: 'G1.-',
    expected: 'a load on every way from plus to minus',
  });
});
