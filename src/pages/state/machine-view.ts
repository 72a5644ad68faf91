/** What of the machine can be seen, as the stage wants it: controls, lamps, displays. Evidence, and nothing but. */
import { type ClusterDisplay, displayOf, inTheFlash, noticed, type TellTale, tellTales } from '../../job/index.ts';
import type { Session } from './session.ts';

/** A filament is seen to glow from about this share of its full current: common practice, no source. */
const GLOWS = 0.3;
const NOMINAL_VOLTS = 12;

export function controlsOf({ attempt, book }: Session): Record<string, string> {
  return Object.fromEntries(book.controls.map((c) => [c.id, attempt.rig.world.controlOf(c.id)]));
}

export function lampsOf(session: Session): Record<string, boolean> {
  const { attempt, book } = session;
  const world = inTheFlash(attempt.rig.world);
  const lamps: Record<string, boolean> = {};
  for (const part of book.parts) {
    if (!('elements' in part) || !/^E\d/.test(part.id)) continue;
    for (const element of part.elements) {
      if (element.law.kind !== 'resistance' && element.law.kind !== 'contact') continue;
      const share = (Math.abs(world.ampsIn(`${part.id}.${element.id}`)) * element.law.ohms) / NOMINAL_VOLTS;
      const suffix = element.id.replace(/^fil\+?/, '');
      const name = element.id.startsWith('fil') && suffix !== '' ? `${part.id}.${suffix}` : part.id;
      lamps[name] = lamps[name] === true || share > GLOWS;
    }
  }
  for (const { id, lit } of tellTalesOf(session)) lamps[id] = lit;
  return lamps;
}

/** The cluster's tell-tales, lit and dark. */
export const tellTalesOf = (session: Session): TellTale[] => tellTales(session.model, onCluster(session));

/** What its display and needles show; null while it is dark. */
export const clusterOf = (session: Session): ClusterDisplay | null =>
  displayOf(session.attempt.rig.world, onCluster(session));

/** Codes of all that somebody notices who can see the cluster. */
const onCluster = ({ attempt, book }: Session): string[] =>
  book.cluster === undefined ? [] : noticed(attempt.rig.world, book.cluster.zones[0] ?? '');

export function isRunning({ attempt }: Session): boolean {
  return attempt.rig.world.stateOf('engine') === 'running';
}

/** Codes that the line has room for; the others are counted. */
const CODES_SHOWN = 3;
/** Drums of the hour meter: whole hours, and tenths on the last. */
const DRUMS = 5;

/** Words and needles of the drawing. What is left out is blank, or rests. */
export function readoutsOf(session: Session): Record<string, number | string> {
  const display = clusterOf(session);
  const hours = hourDrums(session.job.workOrder.hours);
  if (display === null) return hours;
  const { codes, needles, rpm } = display;
  const more = codes.length > CODES_SHOWN ? [`+${codes.length - CODES_SHOWN}`] : [];
  const code = [...codes.slice(0, CODES_SHOWN), ...more].join(' ');
  return { ...hours, ...needles, code, rpm: rpm ?? '- - -' };
}

function hourDrums(hours: number): Record<string, string> {
  const digits = String(Math.floor(hours * 10))
    .padStart(DRUMS, '0')
    .slice(-DRUMS);
  return Object.fromEntries([...digits].map((digit, i) => [`hours${i + 1}`, digit]));
}

export function blownFuses({ attempt, book, bench }: Session): string[] {
  const { world } = attempt.rig;
  const open = (id: string): boolean =>
    world.stateOf(id) === 'blown' || attempt.rig.faults.some((f) => f.at === id && f.mode === 'open');
  return book.parts.filter((p) => p.kind === 'fuse' && bench.pulled.includes(p.id) && open(p.id)).map((p) => p.id);
}
