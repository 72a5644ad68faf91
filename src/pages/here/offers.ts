/** What can be done from where the student stands, in reading order. The canvas offers the same. */
import {
  type Action,
  helperIsThere,
  inCab,
  isOpen,
  liftableAt,
  ownerOf,
  pointsHere,
  repairsFor,
} from '../../job/index.ts';
import type { Session } from '../state/session.ts';
import { sealedAt } from '../words/sealed.ts';

export interface Group {
  id: string;
  kind: 'part' | 'connector';
  points: string[];
  /** Pins that no probe gets at while the plug is together. */
  sealed: string[];
  /** Taking apart and testing. */
  work: Action[];
  repairs: Action[];
  targets: { target: string; actions: Action[] }[];
}

export interface ControlOffer {
  control: string;
  value: string;
  values: string[];
  byHelper: boolean;
}

export function groupsHere(session: Session): Group[] {
  const { model, book, bench } = session;
  const points = new Map<string, string[]>();
  for (const point of pointsHere(model, bench)) {
    const owner = ownerOf(model, point);
    points.set(owner, [...(points.get(owner) ?? []), point]);
  }
  const here = (thing: { zone: string; access: string }): boolean =>
    thing.zone === bench.zone && isOpen(book, bench, thing.access);
  const parts = book.parts.filter((p) => here(p) || points.has(p.id));
  const connectors = book.connectors.filter((c) => here(c));
  return [
    ...parts.map((p) => partGroup(session, p.id, here(p), points.get(p.id) ?? [])),
    ...connectors.map((c) => connectorGroup(session, c.id, points.get(c.id) ?? [])),
  ];
}

function partGroup(session: Session, id: string, isHere: boolean, points: string[]): Group {
  const { model, book, bench } = session;
  if (!isHere) return { id, kind: 'part', points, sealed: [], work: [], repairs: [], targets: [] };
  const part = book.parts.find((p) => p.id === id);
  const work: Action[] = [
    { do: 'look', at: id },
    { do: 'wiggle', at: id },
  ];
  if (part?.kind === 'fuse' || part?.kind === 'relay') {
    work.push(bench.pulled.includes(id) ? { do: 'refit', part: id } : { do: 'pull', part: id });
  }
  const ends = liftableAt(model, id);
  for (const end of ends) work.push(bench.lifted.includes(end) ? { do: 'land', end } : { do: 'lift', end });
  work.push(...exchanges(session, id));
  const repairs = repairsFor(model, id).map((verb): Action => ({ do: 'repair', verb, target: id }));
  const wires = [...new Set(ends.map((end) => `W:${end.split('@')[0]}`))];
  const targets = wires.map((target) => withRepairs(session, target));
  return { id, kind: 'part', points, sealed: [], work, repairs, targets };
}

function exchanges({ book, bench }: Session, id: string): Action[] {
  const part = book.parts.find((p) => p.id === id);
  if (part?.kind !== 'relay') return [];
  return book.parts.flatMap((other): Action[] => {
    const alike = other.kind === 'relay' && other.id !== id && other.type === part.type;
    return alike && other.zone === bench.zone && isOpen(book, bench, other.access)
      ? [{ do: 'exchange', part: id, with: other.id }]
      : [];
  });
}

/** Pin 2 before pin 10, as they are numbered on the plug. */
const byNumber = (a: string, b: string): number => a.localeCompare(b, 'en', { numeric: true });

function connectorGroup(session: Session, id: string, points: string[]): Group {
  const { book, bench, model } = session;
  const work: Action[] = [
    { do: 'look', at: id },
    { do: 'wiggle', at: id },
    bench.unplugged.includes(id) ? { do: 'plug', connector: id } : { do: 'unplug', connector: id },
  ];
  const pins = [...(book.connectors.find((c) => c.id === id)?.pins ?? [])].sort((p, q) => byNumber(p.pin, q.pin));
  const targets = pins.flatMap((pin) => {
    const wires = [pin.a, pin.b].filter((end) => model.wires.has(end)).map((wire) => `W:${wire}`);
    return [`X:${id}.${pin.pin}`, ...wires];
  });
  return {
    id,
    kind: 'connector',
    points: [...points].sort(byNumber),
    sealed: sealedAt(session, id).sealed,
    work,
    repairs: [],
    targets: targets.map((target) => withRepairs(session, target)),
  };
}

/** A wire can also be looked at and moved by hand; a pin shows what its plug shows. */
function withRepairs({ model }: Session, target: string): Group['targets'][number] {
  const looks: Action[] = target.startsWith('W:')
    ? [
        { do: 'look', at: target },
        { do: 'wiggle', at: target },
      ]
    : [];
  return {
    target,
    actions: [...looks, ...repairsFor(model, target).map((verb): Action => ({ do: 'repair', verb, target }))],
  };
}

export function controlsHere(session: Session): ControlOffer[] {
  const { book, bench, attempt } = session;
  const helper = helperIsThere(bench, attempt.timeMs);
  const inside = inCab(book, bench.zone);
  return book.controls.flatMap((spec): ControlOffer[] => {
    if (spec.surroundings === true) return [];
    const cab = inCab(book, spec.zone);
    const byHelper = cab && !inside;
    if (cab ? !inside && !helper : spec.zone !== bench.zone) return [];
    const value = attempt.rig.world.controlOf(spec.id);
    return [{ control: spec.id, value, values: spec.values, byHelper }];
  });
}

/** Covers that belong to this place: those that close it, its parts and its plugs. */
export function coversHere({ book, bench }: Session): Action[] {
  const ids = new Set([
    ...book.zones.filter((z) => z.id === bench.zone).map((z) => z.access),
    ...[...book.parts, ...book.connectors].filter((x) => x.zone === bench.zone).map((x) => x.access),
  ]);
  return book.access
    .filter((step) => ids.has(step.id) && step.openMinutes > 0)
    .map(
      (step): Action =>
        isOpen(book, bench, step.id) ? { do: 'close', access: step.id } : { do: 'open', access: step.id },
    );
}

export function walksFrom({ book, bench }: Session): Action[] {
  return book.zones.filter((z) => z.id !== bench.zone).map((z): Action => ({ do: 'walk', zone: z.id }));
}

export function generalHere(session: Session): Action[] {
  const { book, bench, attempt } = session;
  const helper = helperIsThere(bench, attempt.timeMs);
  const inside: Action[] = inCab(book, bench.zone) ? [{ do: 'codes' }, { do: 'clearCodes' }, { do: 'verify' }] : [];
  return [{ do: 'look', at: bench.zone }, { do: 'helper', call: !helper }, ...inside];
}
