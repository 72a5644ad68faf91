/** The order of the rooms, no cycles, and a core that reads no clock, no page and no unsure arithmetic. */
import { describe, expect, test } from 'vitest';
import { filesIn, importsIn, ownImports, textOf, withoutComments } from './sources.ts';

/** Each room may import only from those before it. */
const ROOMS = [
  'circuit',
  'parts',
  'machine',
  'instruments',
  'job',
  'diagnosis',
  'grading',
  'scenario',
  'storage',
  'lms',
  'sound',
  'game',
  'pages',
  'cli',
];
const CORE = ['circuit', 'parts', 'machine', 'instruments', 'job', 'diagnosis', 'grading'];
const MOST_LINES = 400;

const sources = filesIn('src', /\.tsx?$/);
const roomOf = (path: string): string | null => (path.split('/').length > 2 ? path.split('/')[1] : null);
const core = sources.filter((path) => CORE.includes(roomOf(path) ?? ''));

test('imports are found in each of their forms', () => {
  const text = [
    "import { a } from './a.ts';",
    "import type { B } from '../b.ts';",
    "export * from './c.ts';",
    "import './d.css';",
    "const e = await import('./e.ts');",
    "import {\n  f,\n} from './f.ts';",
    "type G = import('./g.ts').G;",
    "new Worker(new URL('./h.ts', import.meta.url));",
  ].join('\n');
  expect(importsIn(text)).toEqual(['./a.ts', '../b.ts', './c.ts', './d.css', './e.ts', './f.ts', './g.ts', './h.ts']);
});

test('comments are left out, addresses stay', () => {
  expect(withoutComments("a(); // Date\n/* window\n */ b('https://x.y');")).toBe("a(); \n b('https://x.y');");
});

describe('rooms', () => {
  test('there is no other', () => {
    const rooms = new Set(sources.map(roomOf).filter((room) => room !== null));
    expect([...rooms].filter((room) => !ROOMS.includes(room))).toEqual([]);
    expect(core.length).toBeGreaterThan(50);
  });

  test('import only from those before them', () => {
    const against = sources.flatMap((path) => {
      const own = roomOf(path);
      if (own === null) return [];
      return ownImports(path)
        .filter((to) => ROOMS.indexOf(roomOf(to) ?? 'nowhere') > ROOMS.indexOf(own) || roomOf(to) === null)
        .map((to) => `${path} imports ${to}`);
    });
    expect(against).toEqual([]);
  });

  test('every import is of a file that there is', () => {
    const there = new Set(sources);
    const missing = sources.flatMap((path) =>
      ownImports(path)
        .filter((to) => !there.has(to))
        .map((to) => `${path} imports ${to}`),
    );
    expect(missing).toEqual([]);
  });
});

test('no import cycle, types included', () => {
  const state = new Map<string, 'open' | 'done'>();
  const cycles: string[] = [];
  const visit = (path: string, trail: readonly string[]): void => {
    if (state.get(path) === 'done') return;
    if (state.get(path) === 'open') {
      cycles.push([...trail.slice(trail.indexOf(path)), path].join(' > '));
      return;
    }
    state.set(path, 'open');
    for (const to of ownImports(path)) visit(to, [...trail, path]);
    state.set(path, 'done');
  };
  for (const path of sources) visit(path, []);
  expect(cycles).toEqual([]);
});

/** Exact in every engine; all others differ in their last bits. */
const SURE = ['abs', 'min', 'max', 'floor', 'ceil', 'round', 'trunc', 'sign', 'sqrt'];
const BANNED: [what: string, pattern: RegExp][] = [
  ['the power operator', /\*\*/],
  ['Date', /\bDate\b/],
  ['performance', /\bperformance\b/],
  ['a timer', /\b(setTimeout|setInterval|requestAnimationFrame|queueMicrotask)\b/],
  ['the page', /\b(window|document|navigator|localStorage|sessionStorage)\s*[.[(]/],
  ['the network', /\b(fetch|XMLHttpRequest|WebSocket)\s*\(/],
  ['the process', /\bprocess\.|['"]node:/],
  ['a locale', /\btoLocale\w*|\blocaleCompare\b|\bIntl\b/],
  ['Math taken apart', /\bMath\s*(\[|[;,)}])/],
];

describe('the core', () => {
  test.each(core)('%s', (path) => {
    const code = withoutComments(textOf(path));
    const maths = [...code.matchAll(/\bMath\.(\w+)/g)].map((match) => match[1]);
    expect(maths.filter((name) => !SURE.includes(name))).toEqual([]);
    const used = BANNED.filter(([, pattern]) => pattern.test(code)).map(([what]) => what);
    expect(used).toEqual([]);
  });
});

test(`no source file has more than ${MOST_LINES} lines`, () => {
  const long = sources.map((path) => [path, textOf(path).split('\n').length - 1] as const);
  expect(long.filter(([, lines]) => lines > MOST_LINES)).toEqual([]);
});

test('no test is left out, and none runs alone', () => {
  const word =
    /\b(?:test|it|describe|suite|bench)(?:\.\w+)*\.(?:only|skip|todo|skipIf|runIf)\b|\bx(?:it|test|describe)\(/;
  const found = filesIn('tests', /\.tsx?$/).filter((path) => word.test(withoutComments(textOf(path))));
  expect(found).toEqual([]);
});
