/** Whoever can't see or point at the drawing has all of it in the list: its points, parts, controls and places. */
import { beforeAll, describe, expect, test } from 'vitest';
import { buildDrawings } from '../../assets/build/drawings.ts';
import { reachPoint } from '../../src/job/reach.ts';
import { controlsHere, groupsHere, walksFrom } from '../../src/pages/here/offers.ts';
import type { Session } from '../../src/pages/state/session.ts';
import { startWords } from '../../src/pages/words/words.ts';
import { attemptAt, theJob } from '../job/at-work.ts';
import { hobbinModel } from '../support/hobbin.ts';

const { book } = hobbinModel();
const drawings = buildDrawings();
const places = drawings.filter(({ id }) => book.zones.some((zone) => zone.id === id));
const yards = drawings.filter(({ id }) => id.startsWith('yard'));

/** Somebody who stands in a place with every cover off, and each plug parted or none. */
function standing(zone: string, parted: boolean): Session {
  const attempt = attemptAt('job-01');
  const bench = {
    ...attempt.bench,
    zone,
    opened: book.access.map(({ id }) => id),
    unplugged: parted ? book.connectors.map(({ id }) => id) : [],
  };
  return { model: hobbinModel(), book, job: theJob('job-01'), attempt, bench } as unknown as Session;
}

beforeAll(startWords);

test('there are drawings to compare', () => {
  expect(yards).toHaveLength(2);
  expect(places.length).toBeGreaterThan(10);
  const reachable = places.flatMap(({ id, points }) => {
    const { model, bench } = standing(id, true);
    return points.filter(({ point }) => reachPoint(model, bench, point) === null);
  });
  expect(reachable.length).toBeGreaterThan(200);
});

describe.each(places.map((place) => [place.id, place] as const))('%s', (zone, drawn) => {
  test.each([false, true])('each point that takes a probe is in the list, plugs parted: %s', (parted) => {
    const session = standing(zone, parted);
    const listed = new Set(groupsHere(session).flatMap(({ points }) => points));
    const missing = drawn.points
      .map(({ point }) => point)
      .filter((point) => reachPoint(session.model, session.bench, point) === null && !listed.has(point));
    expect(missing).toEqual([]);
  });

  test('each part and control is in it', () => {
    const session = standing(zone, false);
    const groups = new Set(groupsHere(session).map(({ id }) => id));
    const own = new Set([...book.parts, ...book.connectors].filter((x) => x.zone === zone).map(({ id }) => id));
    expect(drawn.parts.map(({ part }) => part).filter((id) => own.has(id) && !groups.has(id))).toEqual([]);
    const controls = new Set(controlsHere(session).map(({ control }) => control));
    expect(drawn.controls.map(({ control }) => control).filter((id) => !controls.has(id))).toEqual([]);
  });

  test('each place that can be entered from the drawing can be walked to', () => {
    const walks = new Set([
      zone,
      ...walksFrom(standing(zone, false)).flatMap((a) => (a.do === 'walk' ? [a.zone] : [])),
    ]);
    const shown = [drawn, ...yards].flatMap(({ areas }) => areas.map((area) => area.zone));
    expect(shown.filter((id) => !walks.has(id))).toEqual([]);
  });
});
