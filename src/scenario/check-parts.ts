/** Parts: names that they use, terminals and inner elements, prices, relay roles, what a controller's manual page says. */
import type { ElementSpec, FaultFamily, PartSpec } from '../parts/index.ts';
import { type NamedIn, namesIn } from './change-names.ts';
import { Finder, type Names } from './names.ts';
import type { Problem } from './problem.ts';

type RelaySpec = Extract<PartSpec, { kind: 'relay' }>;
type ControllerSpec = Extract<PartSpec, { kind: 'controller' }>;

export function checkParts(names: Names): Problem[] {
  const finder = new Finder(names.origins);
  const { book } = names;
  finder.unique(book.parts, (p: PartSpec) => p.id, 'id', 'part');
  checkRegionIds(names, finder);
  checkTroubleCodes(names, finder);
  for (const [i, part] of book.parts.entries()) {
    finder.known(part, 'zone', part.zone, names.zones, 'zone');
    finder.known(part, 'access', part.access, names.access, 'access');
    if (/^(X\d|SP\d)/.test(part.id)) {
      finder.report(part, 'id', 'id-of-connector', part.id, 'an id that does not look like a connector or a splice');
    }
    checkTerminals(names, finder, part, names.contents[i].elements);
    checkPrices(finder, part);
    if ('elements' in part) checkElements(names, finder, part, part.elements);
    if (part.kind === 'relay') checkRelay(finder, part);
    if (part.kind === 'controller') checkController(finder, part);
    if (part.kind === 'fuse') checkFuse(names, finder, part);
    checkFailures(names, finder, part, names.contents[i].faults);
    for (const mode of Object.keys(part.signs ?? {})) {
      if (!part.failures.some((f) => f.mode === mode)) {
        finder.report(part, `signs.${mode}`, 'unknown-mode', mode, 'a mode among its failures');
      }
    }
  }
  return finder.problems;
}

/** A failure that changes nothing that anybody could suspect is a word without a meaning. */
function checkFailures(names: Names, finder: Finder, part: PartSpec, families: readonly FaultFamily[]): void {
  const known: Record<NamedIn, ReadonlySet<string> | ReadonlyMap<string, unknown>> = {
    element: names.elements,
    region: names.regions,
    quantity: names.quantities,
    point: names.points,
    wire: names.wires,
  };
  for (const [i, { mode, ways = [] }] of part.failures.entries()) {
    const where = `failures[${i}]`;
    if (!families.some((family) => family.mode === mode)) {
      const expected = `a mode that a ${part.kind} like this can fail in, or ways that say what it does`;
      finder.report(part, `${where}.mode`, 'unknown-mode', mode, expected);
    }
    for (const [w, way] of ways.entries()) {
      for (const [c, change] of way.entries()) {
        const at = `${where}.ways[${w}][${c}]`;
        for (const [field, name, what] of namesIn(change))
          finder.known(part, `${at}.${field}`, name, known[what], what);
        if (change.kind !== 'stuck') continue;
        const states = names.regions.get(change.region);
        if (states !== undefined) finder.known(part, `${at}.state`, change.state, new Set(states), 'state');
      }
    }
  }
}

/** Two regions of one name would be one: relays, fuses, codes and written regions share a name space. */
function checkRegionIds(names: Names, finder: Finder): void {
  const seen = new Set<string>(['engine']);
  for (const [i, part] of names.book.parts.entries()) {
    for (const region of names.contents[i].regions) {
      if (seen.has(region.id))
        finder.report(part, 'regions', 'duplicate-id', region.id, 'an id that no other region has');
      seen.add(region.id);
    }
  }
  for (const region of names.book.regions) {
    if (seen.has(region.id)) finder.report(region, 'id', 'duplicate-id', region.id, 'an id that no other region has');
    seen.add(region.id);
  }
}

/** A reader shows only the numbers: two codes of the same SPN and FMI could not be told apart. */
function checkTroubleCodes({ book }: Names, finder: Finder): void {
  const seen = new Set<string>();
  for (const part of book.parts) {
    if (part.kind !== 'controller') continue;
    for (const [i, { spn, fmi }] of part.codes.entries()) {
      const both = `${spn}/${fmi}`;
      if (seen.has(both)) finder.report(part, `codes[${i}].spn`, 'duplicate-id', both, 'an SPN and FMI of its own');
      seen.add(both);
    }
  }
}

function checkTerminals(names: Names, finder: Finder, part: PartSpec, elements: readonly ElementSpec[]): void {
  const seen = new Set<string>();
  const inside = new Set(elements.flatMap((e) => [e.a, e.b]));
  for (const [i, terminal] of part.terminals.entries()) {
    const where = `terminals[${i}]`;
    if (seen.has(terminal))
      finder.report(part, where, 'duplicate-id', terminal, 'a terminal that the part has not yet');
    seen.add(terminal);
    const point = `${part.id}.${terminal}`;
    // A socket has no elements at all: its terminals are only the far side of its plug.
    const touched = inside.has(point) || elements.length === 0 || touchedFromOutside(names, part, point);
    if (!touched)
      finder.report(part, where, 'terminal-without-element', point, 'an element of the part that ends there');
  }
  for (const [i, terminal] of (part.hidden ?? []).entries()) {
    if (!seen.has(terminal))
      finder.report(part, `hidden[${i}]`, 'unknown-terminal', terminal, 'a terminal of the part');
  }
}

/** Does another part's element end here, as a bus bar's tab does at a fuse? */
export function touchedFromOutside(names: Names, part: PartSpec, point: string): boolean {
  return names.contents.some(
    (c, i) => names.book.parts[i] !== part && c.elements.some((e) => e.a === point || e.b === point),
  );
}

function checkElements(names: Names, finder: Finder, part: PartSpec, elements: readonly ElementSpec[]): void {
  const seen = new Set<string>();
  for (const [i, element] of elements.entries()) {
    const where = `elements[${i}]`;
    if (seen.has(element.id))
      finder.report(part, `${where}.id`, 'duplicate-id', element.id, 'an id that no other element has');
    seen.add(element.id);
    for (const end of ['a', 'b'] as const) {
      finder.known(part, `${where}.${end}`, element[end], names.terminals, 'terminal');
    }
    if (names.terminals.get(element.a) !== part && names.terminals.get(element.b) !== part) {
      finder.report(
        part,
        where,
        'foreign-element',
        `${element.a} to ${element.b}`,
        `an element that ends at ${part.id}`,
      );
    }
    const { law } = element;
    if (law.kind === 'variable')
      finder.known(part, `${where}.law.quantity`, law.quantity, names.quantities, 'quantity');
    if (law.kind === 'alternator') finder.known(part, `${where}.law.sense`, law.sense, names.points, 'point');
    if (law.kind === 'excitation') finder.known(part, `${where}.law.of`, law.of, names.elements, 'element');
    if (part.kind === 'general' && part.symbol === 'lamp' && law.kind === 'resistance' && law.coldOhms === undefined) {
      finder.report(part, `${where}.law.coldOhms`, 'missing', 'nothing', 'the ohms of the cold filament');
    }
  }
}

function checkPrices(finder: Finder, part: PartSpec): void {
  for (const field of ['price', 'replaceMinutes'] as const) {
    if (part.replaceable && part[field] === null) {
      finder.report(part, field, 'missing', 'null', 'a number, since the part is replaceable');
    }
  }
}

function checkRelay(finder: Finder, part: RelaySpec): void {
  const roles: [string, string | undefined][] = [
    ['coil[0]', part.coil[0]],
    ['coil[1]', part.coil[1]],
    ['common', part.common],
    ['make', part.make],
    ['rest', part.rest],
  ];
  for (const [where, terminal] of roles) {
    if (terminal !== undefined && !part.terminals.includes(terminal)) {
      finder.report(part, where, 'unknown-terminal', terminal, 'a terminal of the part');
    }
  }
  if (part.dropOutVolts >= part.pullInVolts) {
    const expected = `less than the pull-in of ${part.pullInVolts} V`;
    finder.report(part, 'dropOutVolts', 'out-of-range', String(part.dropOutVolts), expected);
  }
}

function checkController(finder: Finder, part: ControllerSpec): void {
  const isOwn = (terminal: string) => part.terminals.includes(terminal);
  if (!isOwn(part.ground)) finder.report(part, 'ground', 'unknown-terminal', part.ground, 'a terminal of the part');
  if (part.pins === undefined) return;
  for (const [i, pin] of part.pins.entries()) {
    if (!isOwn(pin.terminal)) {
      finder.report(part, `pins[${i}].terminal`, 'unknown-terminal', pin.terminal, 'a terminal of the part');
    }
  }
  const told = new Set(part.pins.map((p) => p.terminal));
  for (const terminal of part.terminals) {
    if (told.has(terminal) || part.hidden?.includes(terminal)) continue;
    finder.report(part, 'pins', 'pin-not-described', terminal, 'a line for every terminal that is not hidden');
  }
}

function checkFuse(names: Names, finder: Finder, part: PartSpec): void {
  const told = names.book.limits.some((l) => l.kind === 'fuse' && l.where === part.id);
  if (!told) finder.report(part, 'id', 'fuse-without-limit', part.id, 'a limit of kind fuse for it');
}
