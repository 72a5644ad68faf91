/** Symbols in the manner of IEC 60617, upright on a path at `x` from `top` to `bottom`. */
import type { Canvas } from './canvas.ts';
import { circle, path, rect, STROKE, solid } from './ink.ts';
import type { SymbolKind } from './symbol-kind.ts';

export interface SymbolPlace {
  x: number;
  top: number;
  bottom: number;
}
export interface ContactLook {
  closed: boolean;
  /** A second, resting or working throw at this side: changeover. */
  change: boolean;
}

const middle = (p: SymbolPlace): number => (p.top + p.bottom) / 2;

/** Leads from the path's ends to a body of this height in the middle. */
function leads(canvas: Canvas, p: SymbolPlace, height: number, width: number = STROKE.symbol): [number, number] {
  const a = middle(p) - height / 2;
  const b = middle(p) + height / 2;
  canvas.symbols.push(path(`M${p.x} ${p.top}V${a}M${p.x} ${b}V${p.bottom}`, width));
  canvas.takeLine(p.x, p.top, p.x, a, 3);
  canvas.takeLine(p.x, b, p.x, p.bottom, 3);
  return [a, b];
}

function boxed(canvas: Canvas, p: SymbolPlace, w: number, h: number): [number, number] {
  const [a, b] = leads(canvas, p, h);
  canvas.symbols.push(rect(p.x - w / 2, a, w, h));
  canvas.take(p.x - w / 2 - 1, a - 1, w + 2, h + 2);
  return [a, b];
}

function fuse(canvas: Canvas, p: SymbolPlace): void {
  const [a, b] = boxed(canvas, p, 18, 34);
  canvas.symbols.push(path(`M${p.x} ${a}V${b}`));
}

function coil(canvas: Canvas, p: SymbolPlace): void {
  const [a, b] = boxed(canvas, p, 44, 34);
  canvas.symbols.push(path(`M${p.x - 22} ${b}L${p.x} ${a}`, STROKE.detail));
}

/** At rest: open leans away to the left, closed touches a hook on the right. The blade is hinged below. */
export function contact(canvas: Canvas, p: SymbolPlace, look: ContactLook): void {
  const y = middle(p) - 23;
  const { x } = p;
  if (look.change) {
    changeover(canvas, p);
    return;
  }
  const blade = look.closed
    ? `M${x} ${p.top}V${y + 12}H${x + 13}M${x} ${p.bottom}V${y + 38}L${x + 11} ${y + 8}`
    : `M${x} ${p.top}V${y + 12}M${x} ${p.bottom}V${y + 38}L${x - 15} ${y + 12}`;
  canvas.symbols.push(path(blade, STROKE.contact));
  canvas.takeLine(x, p.top, x, y + 12, 4);
  canvas.takeLine(x, y + 38, x, p.bottom, 4);
  canvas.take(look.closed ? x - 2 : x - 17, y + 6, 18, 33);
}

/** Distance to the throw that the path doesn't take, units. */
export const THROW = 30;

/** Hinged above, closed at rest onto the path itself; the other throw stands to the right. */
function changeover(canvas: Canvas, p: SymbolPlace): void {
  const y = middle(p) - 23;
  const { x } = p;
  canvas.symbols.push(
    path(`M${x} ${p.top}V${y + 8}L${x - 11} ${y + 40}M${x} ${p.bottom}V${y + 36}H${x - 12}`, STROKE.contact),
    path(`M${x + THROW} ${p.bottom}V${y + 36}H${x + 14}`, STROKE.contact),
  );
  canvas.takeLine(x, p.top, x, y + 12, 4);
  canvas.take(x - 14, y + 8, 16, 34);
  canvas.takeLine(x, y + 36, x, p.bottom, 4);
  canvas.takeLine(x + 14, y + 36, x + THROW, y + 36, 4);
  canvas.takeLine(x + THROW, y + 36, x + THROW, p.bottom, 4);
}

function battery(canvas: Canvas, p: SymbolPlace): void {
  const [a] = leads(canvas, p, 31);
  const { x } = p;
  const cell = (y: number) => `M${x - 24} ${y}H${x + 24}M${x - 12} ${y + 9}H${x + 12}`;
  canvas.symbols.push(path(cell(a) + cell(a + 22), 3), path(`M${x} ${a + 9}V${a + 22}`, STROKE.symbol));
  canvas.take(x - 26, a - 2, 52, 35);
}

function motor(canvas: Canvas, p: SymbolPlace): void {
  leads(canvas, p, 46);
  canvas.symbols.push(circle(p.x, middle(p), 23, STROKE.contact));
  canvas.take(p.x - 24, middle(p) - 24, 48, 12);
  canvas.take(p.x - 24, middle(p) + 14, 48, 10);
  canvas.take(p.x - 24, middle(p) - 9, 15, 18);
  canvas.take(p.x + 9, middle(p) - 9, 15, 18);
  const spot = { x: p.x, y: middle(p) + 7, anchor: 'middle' as const };
  canvas.label({ of: 'symbol', lines: [{ text: 'M', size: 20, bold: true }], spots: [spot] });
}

function lamp(canvas: Canvas, p: SymbolPlace): void {
  leads(canvas, p, 32);
  const y = middle(p);
  canvas.symbols.push(circle(p.x, y, 16));
  canvas.symbols.push(path(`M${p.x - 11.3} ${y - 11.3}l22.6 22.6m0 -22.6l-22.6 22.6`));
  canvas.take(p.x - 17, y - 17, 34, 34);
}

/** Low side output: a transistor toward ground. */
function driver(canvas: Canvas, p: SymbolPlace): void {
  const [a, b] = leads(canvas, p, 44);
  const { x } = p;
  canvas.symbols.push(
    path(`M${x} ${a}L${x - 14} ${a + 11}M${x - 14} ${b - 11}L${x} ${b}`),
    path(`M${x - 14} ${a + 6}V${b - 6}`, 3.6),
    path(`M${x - 14} ${middle(p)}H${x - 27}`),
    solid(`M${x - 1} ${b - 0.8}l-10 -2.2l5.6 -7.2z`),
  );
  canvas.take(x - 28, a, 29, 44);
}

function line(canvas: Canvas, p: SymbolPlace): void {
  canvas.symbols.push(path(`M${p.x} ${p.top}V${p.bottom}`));
  canvas.takeLine(p.x, p.top, p.x, p.bottom, 3);
}

/** Where lugs are bolted to metal: a bar across the path. */
function stud(canvas: Canvas, p: SymbolPlace): void {
  line(canvas, p);
  canvas.symbols.push(path(`M${p.x - 13} ${middle(p)}H${p.x + 13}`, STROKE.rail));
  canvas.take(p.x - 15, middle(p) - 3, 30, 6);
}

const BODY: Record<Exclude<SymbolKind, 'contact'>, (canvas: Canvas, p: SymbolPlace) => void> = {
  fuse,
  coil,
  winding: (canvas, p) => void boxed(canvas, p, 20, 36),
  battery,
  motor,
  lamp,
  driver,
  input: (canvas, p) => void boxed(canvas, p, 13, 28),
  line,
  stud,
};

export function symbol(canvas: Canvas, kind: SymbolKind, p: SymbolPlace, look: ContactLook): void {
  if (kind === 'contact') contact(canvas, p, look);
  else BODY[kind](canvas, p);
}

/** How far each half of a parted plug stands off, units. */
const APART = 6;

/**
 * Cup over pin, together and parted. `plugTop`: the wire's half is above (a plug's cup, or an inline connector's
 * socket).
 */
export function plug(canvas: Canvas, connector: string, { x, top, bottom }: SymbolPlace, plugTop: boolean): void {
  const y = (top + bottom) / 2;
  const s = plugTop ? 1 : -1;
  const halves = (off: number): string => {
    const [cup, pin] = [y - s * off, y + s * off];
    const lead = (from: number, to: number): string => (from === to ? '' : `M${x} ${from}V${to}`);
    return (
      path(`M${x - 9} ${cup + s}A9 9 0 0 ${plugTop ? 1 : 0} ${x + 9} ${cup + s}`) +
      solid(`M${x - 4} ${pin - 2 * s}H${x + 4}V${pin + 9 * s}H${x - 4}Z`) +
      path(lead(plugTop ? top : bottom, cup - 8 * s) + lead(pin + 9 * s, plugTop ? bottom : top))
    );
  };
  canvas.plug(connector, halves(0), halves(APART) + path(`M${x - 12} ${y + 3 * s}H${x + 12}`, 3, { stroke: '{r2}' }));
  canvas.take(x - 11, y - 12, 22, 24);
}
