/** Ways in which plain parts fail, mode by mode: each gives its families from the part's own elements. */
import { type Change, type FaultFamily, severityGrid } from '../change.ts';
import type { ElementSpec, FailureSpec, Law } from '../spec.ts';
import { alternatorModes } from './alternator-faults.ts';
import { batteryModes } from './battery-faults.ts';
import { elementId, type PartOf, type Plain, type Way } from './kind.ts';

type Mode = (part: Plain) => Way[];

export function plainFamilies(part: Plain, { mode, weight }: FailureSpec): FaultFamily[] {
  const cures = curesOf(part, mode);
  return (MODES[mode]?.(part) ?? []).map(({ share, severities, changes }) => ({
    at: part.id,
    mode,
    weight: weight * share,
    severities: [...severities],
    fault: (degree) => ({ at: part.id, mode, changes: changes(degree), cures }),
  }));
}

function curesOf(part: Plain, mode: string): string[] {
  if (mode === 'misadjusted') return ['adjust', 'replace'];
  if (mode === 'loose') return ['tighten', 'clean', 'replace'];
  if (mode === 'corroded' || (part.kind === 'general' && part.symbol === 'ground')) return ['clean', 'replace'];
  return mode === 'discharged' ? ['charge', 'replace'] : ['replace'];
}

/** Elements through which this part's main current flows: contacts of a switch, the coil or filament of a load. */
function carriers(part: Plain): ElementSpec[] {
  const contacts = part.elements.filter((e) => e.law.kind === 'contact' && e.law.openOhms === undefined);
  if (part.kind !== 'general') return contacts;
  const kinds: Law['kind'][] = ['resistance', 'contact', 'variable', 'battery', 'alternator'];
  return part.elements.filter((e) => kinds.includes(e.law.kind));
}

const series = (part: Plain, element: ElementSpec, ohms: number | null): Change => ({
  kind: 'series',
  element: elementId(part.id, element.id),
  ohms,
});

/** The same at each of these elements in turn. */
function each(
  elements: readonly ElementSpec[],
  changes: (element: ElementSpec, degree: number) => Change[],
  severities: readonly number[] = [],
): Way[] {
  return elements.map((element) => ({
    share: 1 / elements.length,
    severities,
    changes: (degree) => changes(element, degree),
  }));
}

const once = (changes: Change[]): Way[] => [{ share: 1, severities: [], changes: () => changes }];

const open: Mode = (part) => each(carriers(part), (element) => [series(part, element, null)]);
const resistance: Mode = (part) =>
  each(
    carriers(part),
    (element, ohms) => [series(part, element, ohms)],
    severityGrid(part.kind === 'general' ? ratedAmps(part) : SWITCH_AMPS),
  );

/** A switch's current, amperes. */
const SWITCH_AMPS = 10;
/** How much too high and too low a sender's or resistor's own ohms can be (common practice, no source). */
const DRIFT_UP = [1.15, 1.4, 2, 4];
const DRIFT_DOWN = [0.87, 0.7, 0.5, 0.25];
/** What is left of a winding shorted in itself, ohms. */
const SHORTED_OHMS = 0.05;

const MODES: Readonly<Record<string, Mode>> = {
  open,
  open_output: open,
  stuck_off: open,
  // It comes and goes; the machine is judged while it is gone.
  intermittent: open,
  dead,
  high_r: resistance,
  loose: resistance,
  corroded: resistance,
  stuck_on: (part) => each(carriers(part), (element) => [{ kind: 'closed', element: elementId(part.id, element.id) }]),
  misadjusted,
  shorted: (part) =>
    each(carriers(part), (element) => [{ kind: 'ohms', element: elementId(part.id, element.id), ohms: SHORTED_OHMS }]),
  // A needle, a spool or a diaphragm that does not move draws what it always draws.
  stuck: () => once([]),
  stalled,
  drift,
  lamp_open: (part) => each(part.elements.filter(isFilament), (element) => [series(part, element, null)]),
  weak: (part) => batteryModes.weak(part) ?? alternatorModes.weak(part) ?? worn(part),
  discharged: (part) => batteryModes.discharged(part) ?? [],
  open_exc: (part) => alternatorModes.open_exc(part) ?? [],
  overcharge: (part) => alternatorModes.overcharge(part) ?? [],
  leak: (part) => alternatorModes.leak(part) ?? [],
};

/** A dead controller holds nothing on, whatever it is fed; a dead radio takes no current. */
function dead(part: Plain): Way[] {
  const regions = part.kind === 'controller' ? part.regions.filter((r) => r.states.includes('off')) : [];
  if (regions.length === 0) return open(part);
  return once(regions.map((region): Change => ({ kind: 'stuck', region: region.id, state: 'off' })));
}

/** A switch whose plunger or cam no longer reaches: its working contacts stay open together, or one of them does. */
function misadjusted(part: Plain): Way[] {
  const contacts = carriers(part);
  const all = contacts.length > 1 ? [...contacts.map((contact) => [contact]), contacts] : contacts.map((c) => [c]);
  return all.map((which) => ({
    share: 1 / all.length,
    severities: [],
    changes: () => which.map((element) => series(part, element, null)),
  }));
}

const isLoad = (element: ElementSpec): boolean => element.load === true && element.law.kind === 'resistance';
const isFilament = (element: ElementSpec): boolean =>
  isLoad(element) && element.law.kind === 'resistance' && element.law.coldOhms !== undefined;

/** A motor that is held fast has the ohms of one that stands. */
function stalled(part: Plain): Way[] {
  const standing = part.elements.flatMap((element): Change[] =>
    element.law.kind === 'resistance' && element.load === true && element.law.coldOhms !== undefined
      ? [{ kind: 'ohms', element: elementId(part.id, element.id), ohms: element.law.coldOhms }]
      : [],
  );
  return standing.length === 0 ? [] : once(standing);
}

/** Worn brushes: ohms in the way of the motor's current. */
function worn(part: Plain): Way[] {
  const loads = part.elements.filter(isLoad);
  const grid = part.kind === 'general' ? severityGrid(ratedAmps(part)) : [];
  return each(loads, (element, ohms) => [series(part, element, ohms)], grid);
}

/** Too many or too few ohms, each in half of the cases. */
function drift(part: Plain): Way[] {
  const element = carriers(part).at(-1);
  if (element === undefined) return [];
  return [DRIFT_UP, DRIFT_DOWN].map((severities) => ({
    share: 0.5,
    severities,
    changes: (factor) => [{ kind: 'drift', element: elementId(part.id, element.id), factor }],
  }));
}

/** Rated current of a load from its own resistance at 12 V, at least 1 A; studs and battery carry the starter's. */
function ratedAmps(part: PartOf<'general'>): number {
  const ohms = part.elements.flatMap((e) => (e.law.kind === 'resistance' ? [e.law.ohms] : []));
  const least = ohms.length === 0 ? 1 : Math.min(...ohms);
  return Math.min(300, Math.max(1, 12 / Math.max(least, 1e-6)));
}
