/** What of the machine can be seen, as the stage wants it: controls, lamps, displays. Evidence, and nothing but. */
import type { Session } from './session.ts';

/** Amperes from which a cluster lamp is seen to be lit (the book's observables). */
const CHARGE_LAMP_AMPS = 0.05;
const BRAKE_LAMP_AMPS = 0.008;
/** A filament is seen to glow from about this share of its full current: common practice, no source. */
const GLOWS = 0.3;
const NOMINAL_VOLTS = 12;
/** Fuel sender, ohms (book): empty and full. */
const EMPTY_OHMS = 180;
const FULL_OHMS = 10;
/** Where the needle of a warm engine that has cooled down stands. */
const COOL = 0.18;

export function controlsOf({ attempt, book }: Session): Record<string, string> {
  return Object.fromEntries(book.controls.map((c) => [c.id, attempt.rig.world.controlOf(c.id)]));
}

export function lampsOf({ attempt, book, model }: Session): Record<string, boolean> {
  const { world } = attempt.rig;
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
  const amps = (id: string): number => (model.elementIndex.has(id) ? Math.abs(world.ampsIn(id)) : 0);
  lamps.CHG = amps('A2.chlamp') > CHARGE_LAMP_AMPS;
  lamps.PBL = amps('A2.pblamp') > BRAKE_LAMP_AMPS;
  return lamps;
}

export function isRunning({ attempt }: Session): boolean {
  return attempt.rig.world.stateOf('engine') === 'running';
}

export function readoutsOf({ attempt, model }: Session): Record<string, number | string> | undefined {
  const { world } = attempt.rig;
  if (!model.regionIndex.has('A2.RUN') || world.stateOf('A2.RUN') !== 'on') return undefined;
  const knows = world.stateOf('CAN.A1A2') === 'working';
  const fuel = (EMPTY_OHMS - world.quantityOf('level')) / (EMPTY_OHMS - FULL_OHMS);
  return {
    rpm: knows ? Math.round(world.quantityOf('rpm') / 10) * 10 : '- - -',
    code: '',
    fuel,
    coolant: knows ? COOL : 0,
  };
}

export function blownFuses({ attempt, book, bench }: Session): string[] {
  const { world } = attempt.rig;
  const open = (id: string): boolean =>
    world.stateOf(id) === 'blown' || attempt.rig.faults.some((f) => f.at === id && f.mode === 'open');
  return book.parts.filter((p) => p.kind === 'fuse' && bench.pulled.includes(p.id) && open(p.id)).map((p) => p.id);
}
