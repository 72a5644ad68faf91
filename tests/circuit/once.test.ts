/** A value that belongs to an object is worked out once, and each object has its own. */
import { expect, test } from 'vitest';
import { once } from '../../src/circuit/index.ts';

test('worked out once for each object, an empty text and zero too', () => {
  const asked: object[] = [];
  const count = once((key: { size: number }) => {
    asked.push(key);
    return key.size;
  });
  const none = { size: 0 };
  const same = { size: 0 };
  expect([count(none), count(none), count(same)]).toEqual([0, 0, 0]);
  expect(asked).toEqual([none, same]);
  expect(asked[1]).toBe(same);
});

test('what failed is tried again', () => {
  let times = 0;
  const frail = once((_key: object) => {
    times++;
    if (times === 1) throw new Error('not yet');
    return 'made';
  });
  const key = {};
  expect(() => frail(key)).toThrow('not yet');
  expect(frail(key)).toBe('made');
});
