/** What the drawings' displays are given: every word that they have room for, from the machine and the work order. */
import { expect, test } from 'vitest';
import { buildDrawings } from '../../assets/build/drawings.ts';
import { isWritten } from '../../src/game/raster.ts';
import { Attempt } from '../../src/job/index.ts';
import { lampsOf, readoutsOf } from '../../src/pages/state/machine-view.ts';
import { Session } from '../../src/pages/state/session.ts';
import { theJob } from '../job/at-work.ts';
import { hobbinModel } from '../support/hobbin.ts';

const [model, job] = [hobbinModel(), theJob('job-01')];

function session(): Session {
  const attempt = new Attempt(model, job);
  const { header } = attempt.log;
  const stored = { id: 'a', jobId: job.id, header, takenAt: '', tenths: 0, ended: false, practice: true };
  return Session.toLookAt(model, job, stored, attempt);
}
/** The hour meter is drawn twice: on the panel and beside its open back. */
const screens = buildDrawings().flatMap((d) => d.layers.filter((l) => l.role === 'screen'));

test("the hour meter has the work order's hours and no tenth, with the key off", () => {
  const { hours1, hours2, hours3, hours4, hours5, ...others } = readoutsOf(session());
  expect([hours1, hours2, hours3, hours4, hours5].join('')).toBe(`${job.workOrder.hours}0`);
  expect(others).toEqual({});
});

test('with the key off only the hour meter is written, with the key on every display is', () => {
  const machine = session();
  const written = (): string[] => screens.filter((l) => isWritten(l.svg, readoutsOf(machine))).map((l) => l.id);
  expect(new Set(written())).toEqual(new Set(['count-P1']));
  machine.act({ do: 'start' });
  machine.act({ do: 'operate', control: 'key', value: 'run' });
  expect(written()).toEqual(screens.map((l) => l.id));
  expect(written()).toContain('display-A2');
});

test('the lamps of the drawing are those that are noticed', () => {
  const machine = session();
  machine.act({ do: 'start' });
  expect(Object.entries(lampsOf(machine)).filter(([, lit]) => lit)).toEqual([]);
  machine.act({ do: 'operate', control: 'key', value: 'run' });
  const lit = Object.entries(lampsOf(machine)).flatMap(([id, on]) => (on ? [id] : []));
  expect(lit).toEqual(['CHG', 'PBL', 'OIL']);
});
