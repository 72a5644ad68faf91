import { expect, test } from 'vitest';
import { Edit } from '../book-fixture.ts';

test('a lamp without the ohms of its cold filament', () => {
  const book = new Edit();
  book.element('parts-lamps.json', 'E11', 'fil+').law = { kind: 'resistance', ohms: 3.17 };
  expect(book.problems()).toContainEqual({
    file: 'parts-lamps.json',
    path: `${book.elementPath('parts-lamps.json', 'E11', 'fil+')}.law.coldOhms`,
    code: 'missing',
    found: 'nothing',
    expected: 'the ohms of the cold filament',
  });
});
