/** Wires, connectors, splices and studs: does every wire end somewhere, and does every table tell the same story? */
import type { ConnectorSpec, PinSpec, WireSpec } from '../machine/book.ts';
import { PIN_MODES, WIRE_MODES } from '../machine/index.ts';
import type { PartSpec } from '../parts/index.ts';
import { touchedFromOutside } from './check-parts.ts';
import { Finder, type Names } from './names.ts';
import type { Problem } from './problem.ts';

export function checkWiring(names: Names): Problem[] {
  const finder = new Finder(names.origins);
  const { book } = names;
  const plugged = new Set(book.connectors.filter((c) => c.kind === 'device').flatMap((c) => c.pins.map((p) => p.b)));
  finder.unique(book.wires, (w: WireSpec) => w.id, 'id', 'wire');
  finder.unique(book.connectors, (c: ConnectorSpec) => c.id, 'id', 'connector');
  finder.unique(book.splices, (s: { id: string }) => s.id, 'id', 'splice');
  for (const wire of book.wires) checkWire(names, finder, wire, plugged);
  for (const connector of book.connectors) checkConnector(names, finder, connector);
  checkSplices(names, finder);
  checkGrounds(names, finder);
  for (const part of book.parts) checkWired(names, finder, part, plugged);
  return finder.problems;
}

function checkWire(names: Names, finder: Finder, wire: WireSpec, plugged: ReadonlySet<string>): void {
  for (const end of ['from', 'to'] as const) {
    const point = wire[end];
    if (!finder.known(wire, end, point, names.ends, 'point')) continue;
    if (plugged.has(point)) {
      finder.report(wire, end, 'behind-plug', point, "side a of the plug's pin, since the terminal has a plug");
    }
  }
  finder.known(wire, 'harness', wire.harness, names.harnesses, 'harness');
  checkModes(finder, wire, WIRE_MODES);
}

/** Everything that a book lists must be something that can be suspected. */
function checkModes(finder: Finder, at: WireSpec | ConnectorSpec, modes: readonly string[]): void {
  for (const [i, { mode }] of at.failures.entries()) {
    if (!modes.includes(mode))
      finder.report(at, `failures[${i}].mode`, 'unknown-mode', mode, `one of ${modes.join(', ')}`);
  }
}

function checkConnector(names: Names, finder: Finder, connector: ConnectorSpec): void {
  finder.known(connector, 'zone', connector.zone, names.zones, 'zone');
  finder.known(connector, 'access', connector.access, names.access, 'access');
  finder.known(connector, 'harnessA', connector.harnessA, names.harnesses, 'harness');
  checkModes(finder, connector, PIN_MODES);
  const inline = connector.kind === 'inline';
  finder.eachKnown(connector, 'b', connector.b, inline ? names.harnesses : names.parts, inline ? 'harness' : 'part');
  const seen = new Set<string>();
  for (const [i, pin] of connector.pins.entries()) {
    const where = `pins[${i}]`;
    if (seen.has(pin.pin))
      finder.report(connector, `${where}.pin`, 'duplicate-id', pin.pin, 'a pin that the connector has not yet');
    seen.add(pin.pin);
    if (Number(pin.pin) > connector.cavities) {
      finder.report(connector, `${where}.pin`, 'beyond-cavities', pin.pin, `a pin up to ${connector.cavities}`);
    }
    checkSide(names, finder, connector, pin, where, 'a');
    if (inline) checkSide(names, finder, connector, pin, where, 'b');
    else checkDevice(names, finder, connector, pin, where);
  }
}

/** One wire on this side, the one that the pin names, of the pin's number and of this side's harness. */
function checkSide(names: Names, finder: Finder, c: ConnectorSpec, pin: PinSpec, where: string, side: 'a' | 'b'): void {
  const point = `${c.id}.${pin.pin}.${side}`;
  const named = names.wires.get(pin[side]);
  const landed = names.landed.get(point) ?? [];
  const at = `${where}.${side}`;
  if (named === undefined) {
    finder.report(c, at, 'unknown-wire', pin[side], 'a wire of this book');
    return;
  }
  if (landed.length === 0) {
    finder.report(c, at, 'empty-pin', point, 'one wire that ends there');
    return;
  }
  if (landed.length > 1) {
    const both = landed.map((w) => w.id).join(', ');
    finder.report(c, at, 'pin-used-twice', both, 'one wire that ends there');
  } else if (landed[0] !== named) {
    finder.report(c, at, 'pin-disagrees', pin[side], `${landed[0].id}, the wire that ends at ${point}`);
  }
  if (named.number !== pin.number) {
    finder.report(c, at, 'number-changes', `${named.id} is number ${named.number}`, `a wire of number ${pin.number}`);
  }
  const harness = side === 'a' ? c.harnessA : c.b[0];
  if (named.harness !== harness) {
    const expected = `a wire of harness ${harness} on side ${side}`;
    finder.report(c, at, 'wrong-harness', `${named.id} is of ${named.harness}`, expected);
  }
}

function checkDevice(names: Names, finder: Finder, connector: ConnectorSpec, pin: PinSpec, where: string): void {
  const part = names.terminals.get(pin.b);
  if (part === undefined) finder.report(connector, `${where}.b`, 'unknown-terminal', pin.b, 'a terminal of a part');
  else if (!connector.b.includes(part.id)) {
    finder.report(connector, `${where}.b`, 'wrong-device', pin.b, `a terminal of ${connector.b.join(' or ')}`);
  }
}

function checkSplices(names: Names, finder: Finder): void {
  for (const splice of names.book.splices) {
    finder.known(splice, 'harness', splice.harness, names.harnesses, 'harness');
    const landed = names.landed.get(splice.id) ?? [];
    const found = landed.map((w) => w.id);
    if (found.length < 3) {
      finder.report(
        splice,
        'wires',
        'splice-too-small',
        found.join(', ') || 'no wire',
        'three wires or more that end there',
      );
    }
    sameList(finder, splice, splice.wires, found);
    const foreign = landed.filter((w) => w.harness !== splice.harness);
    for (const wire of foreign) {
      finder.report(
        splice,
        'harness',
        'splice-spans-harnesses',
        `${wire.id} is of ${wire.harness}`,
        `wires of ${splice.harness} only`,
      );
    }
    const numbers = new Set(landed.map((w) => w.number).filter((n) => !splice.branches?.includes(n)));
    if (numbers.size > 1) {
      finder.report(splice, 'wires', 'number-changes', [...numbers].join(', '), 'one number, and others as branches');
    }
  }
}

function checkGrounds(names: Names, finder: Finder): void {
  for (const ground of names.book.grounds) {
    const part = names.parts.get(ground.part);
    if (part === undefined) {
      finder.report(ground, 'part', 'unknown-part', ground.part, 'a part of this book');
      continue;
    }
    const found = part.terminals.flatMap((t) => names.landed.get(`${part.id}.${t}`) ?? []).map((w) => w.id);
    sameList(finder, ground, ground.wires, found);
  }
}

function sameList(finder: Finder, record: object, told: readonly string[], found: readonly string[]): void {
  const missing = found.filter((id) => !told.includes(id));
  const extra = told.filter((id) => !found.includes(id));
  if (missing.length === 0 && extra.length === 0) return;
  finder.report(record, 'wires', 'wires-disagree', told.join(', '), `${found.join(', ')}, the wires that end there`);
}

/** A terminal that nothing reaches: no wire, no plug, no other part. A changeover relay may leave one contact unused. */
function checkWired(names: Names, finder: Finder, part: PartSpec, plugged: ReadonlySet<string>): void {
  const spare = part.kind === 'relay' && part.rest !== undefined ? [part.make, part.rest] : [];
  const bare = part.terminals.filter((terminal) => {
    const point = `${part.id}.${terminal}`;
    const reached = names.landed.has(point) || plugged.has(point) || part.hidden?.includes(terminal) === true;
    return !reached && !touchedFromOutside(names, part, point) && !reachesOut(names, part, point);
  });
  for (const terminal of bare) {
    if (spare.includes(terminal) && !spare.every((t) => bare.includes(t))) continue;
    const where = `terminals[${part.terminals.indexOf(terminal)}]`;
    finder.report(
      part,
      where,
      'terminal-without-wire',
      `${part.id}.${terminal}`,
      'a wire, a plug or another part there',
    );
  }
}

/** Does an element of the part itself lead from here to another part, as a body ground does? */
function reachesOut(names: Names, part: PartSpec, point: string): boolean {
  const content = names.contents[names.book.parts.indexOf(part)];
  return content.elements.some((e) => {
    const other = e.a === point ? e.b : e.b === point ? e.a : null;
    return other !== null && names.terminals.get(other) !== part;
  });
}
