/** The book's own sentences as a student reads them: a name before each number, and no side that only a table knows. */
import { beforeAll, describe, expect, test } from 'vitest';
import { inText, localName, partName } from '../../src/pages/words/names.ts';
import { plain } from '../../src/pages/words/plain.ts';
import { doneText, toDoText, whyText } from '../../src/pages/words/precautions.ts';
import { startWords } from '../../src/pages/words/words.ts';
import { hobbinModel } from '../support/hobbin.ts';

beforeAll(startWords);

describe('numbers in the text of the book', () => {
  const model = hobbinModel();
  const { book } = model;

  test.each([
    ['K10.30 is live', 'Intake heater relay (K10) terminal 30 is live'],
    ['Pull FM1-FM6.', 'Pull main fuses (FM1 to FM6).'],
    ['Battery disconnect switch S1 off', 'Battery disconnect switch (S1) off'],
    ['Never bridge S4 (seat switch).', 'Never bridge the seat switch (S4).'],
    ['below 50 C before AC6', 'below 50 C before you remove the belly pan'],
    ['into the frame (AC9, AC10)', 'into the frame (front lamp guard, cab floor plate)'],
    ['Fuse F10 was found open', 'Crank request fuse (F10) was found open'],
    [
      'S1 off first. Never open S1 while it runs',
      'Battery disconnect switch (S1) off first. Never open S1 while it runs',
    ],
    ['Wire 208 off terminal S (50), 12 V, 10 s', 'Wire 208 off terminal S (50), 12 V, 10 s'],
  ])('%s', (text, said) => {
    expect(plain(model, text)).toBe(said);
  });

  test('are never met without their name in a caution, a precaution or a check', () => {
    const texts = [
      ...book.manual.filter((s) => s.id.startsWith('caution')).map((s) => plain(model, s.text)),
      ...book.precautions.flatMap((p) => [doneText(model, p.id), toDoText(model, p.id)]),
      ...book.checks.map((c) => whyText(model, c.id) ?? ''),
    ];
    const ids = [...book.parts, ...book.connectors].map((x) => x.id);
    const bare = texts.flatMap((text) =>
      ids.filter((id) => {
        const at = text.search(new RegExp(`\\b${id}\\b`));
        return at >= 0 && !/[a-z+] (?:\()?$|\([A-Z]+\d+ to $/.test(text.slice(0, at));
      }),
    );
    expect(bare).toEqual([]);
    expect(texts.filter((text) => /\bAC\d/.test(text))).toEqual([]);
  });
});

describe('names', () => {
  const model = hobbinModel();

  test.each([
    ['K1', 'Start relay (K1)', 'start relay (K1)'],
    ['F10', 'Fuse 5 A: crank request (F10)', 'crank request fuse (F10)'],
    ['FM3', 'Main fuse MIDI 60 A: run power relay K3 (FM3)', 'run power relay main fuse (FM3)'],
    ['G1', 'Battery 12 V 100 Ah 760 A(EN) (G1)', 'battery (G1)'],
    ['X3', 'Frame to engine connector (X3)', 'frame to engine connector (X3)'],
    ['X9', 'Seat switch plug (X9)', 'seat switch plug (X9)'],
  ])('%s as a heading and in a sentence', (id, heading, said) => {
    expect(partName(model.book, id)).toBe(heading);
    expect(inText(model.book, id)).toBe(said);
  });

  test('of sides are harnesses, and of fuse terminals where the current comes from', () => {
    expect(localName(model, 'X3.3.a')).toBe('pin 3, frame harness side');
    expect(localName(model, 'X3.3.b')).toBe('pin 3, engine harness side');
    expect(localName(model, 'F10.a')).toBe('top, feed side');
    expect(localName(model, 'F10.b')).toBe('top, load side');
    expect(localName(model, 'FM4.a')).toBe('stud, feed side');
  });

  test('no point of the machine is said by side a or b', () => {
    const jargon = model.points.filter((point) => /side [ab]\b|terminal [ab]\b/.test(localName(model, point)));
    expect(jargon).toEqual([]);
  });
});
