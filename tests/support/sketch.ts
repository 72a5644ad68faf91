/**
 * Small circuits written as text, for the solver and for SPICE alike. One element a line (or between semicolons):
 * `R1 a b 3k` resistor, `V1 plus minus 12` voltage source, `V1 plus minus 12 0.01` the same with internal ohms,
 * `I1 from to 2` current driven out of `to`. Node 0 is the reference.
 */
import { Network, REFERENCE } from '../../src/circuit/index.ts';

/** Ohms inside a source that the textbook calls ideal: a millionth of the least resistor, below any printed digit. */
const IDEAL_SHARE = 1e-6;

interface SketchElement {
  id: string;
  a: string;
  b: string;
  /** Ohms of a resistor, ohms inside a voltage source, null for a current source. */
  ohms: number | null;
  volts: number;
  amps: number;
}

const SCALES: Record<string, number> = { u: 1e-6, m: 1e-3, k: 1e3, M: 1e6, G: 1e9 };

/** `3k` is 3000; a number without a suffix is in base units. */
export function numberOf(text: string): number {
  const scale = SCALES[text.at(-1) ?? ''];
  return scale === undefined ? Number(text) : Number(text.slice(0, -1)) * scale;
}

export function parseSketch(text: string): SketchElement[] {
  const rows = text
    .split(/[;\n]/)
    .map((line) => line.trim())
    .filter((line) => line !== '');
  const elements = rows.map((line): SketchElement => {
    const [id, a, b, value, inside] = line.split(/\s+/);
    const size = numberOf(value);
    if (!Number.isFinite(size)) throw new Error(`not a number in the sketch: ${line}`);
    if (id.startsWith('R')) return { id, a, b, ohms: size, volts: 0, amps: 0 };
    if (id.startsWith('I')) return { id, a, b, ohms: null, volts: 0, amps: size };
    return { id, a, b, ohms: inside === undefined ? 0 : numberOf(inside), volts: size, amps: 0 };
  });
  const least = Math.min(...elements.filter((e) => e.id.startsWith('R')).map((e) => e.ohms ?? 0));
  for (const e of elements) if (e.id.startsWith('V') && e.ohms === 0) e.ohms = least * IDEAL_SHARE;
  return elements;
}

export class Sketch {
  readonly network: Network;
  private readonly nodes = new Map<string, number>([['0', REFERENCE]]);
  private readonly elements: SketchElement[];

  constructor(text: string) {
    this.elements = parseSketch(text);
    const edges = this.elements.map((e): [number, number] => [this.node(e.a), this.node(e.b)]);
    this.network = Network.of(this.nodes.size - 1, edges);
    this.elements.forEach((e, i) => {
      this.network.siemens[i] = e.ohms === null ? 0 : 1 / e.ohms;
      // A current source drives out of its `b` end; a Norton current is counted out of the `a` end.
      this.network.norton[i] = e.ohms === null ? -e.amps : e.volts / e.ohms;
    });
    this.network.factor();
    this.network.solve();
  }

  private node(name: string): number {
    const known = this.nodes.get(name);
    if (known !== undefined) return known;
    this.nodes.set(name, this.nodes.size - 1);
    return this.nodes.size - 2;
  }

  private at(name: string): number {
    const node = this.nodes.get(name);
    if (node === undefined) throw new Error(`no node ${name} in the sketch`);
    return node;
  }

  private edge(id: string): number {
    const index = this.elements.findIndex((e) => e.id === id);
    if (index < 0) throw new Error(`no element ${id} in the sketch`);
    return index;
  }

  volts(a: string, b = '0'): number {
    return this.network.between(this.at(a), this.at(b));
  }

  /** Through a resistor from its first node to its second; out of the plus pole of a source. */
  amps(id: string): number {
    const edge = this.edge(id);
    return id.startsWith('R') ? this.network.amps(edge) : -this.network.amps(edge);
  }

  /** Heat in a resistor, or power that a source gives (negative: it takes), watts. */
  watts(id: string): number {
    const { a, b } = this.elements[this.edge(id)];
    return this.volts(a, b) * this.amps(id);
  }

  /** With all sources at rest, ohms. */
  ohms(a: string, b = '0'): number {
    return this.network.resistance(this.at(a), this.at(b));
  }

  /** `V(1,2)`, `V(1)`, `I(R1)`, `P(R1)` or `R(1,0)`. */
  quantity(text: string): number {
    const [, what, first, second] = /^([VIPR])\((\w+)(?:,(\w+))?\)$/.exec(text) ?? [];
    if (what === 'V') return this.volts(first, second);
    if (what === 'R') return this.ohms(first, second);
    if (what === 'I') return this.amps(first);
    if (what === 'P') return this.watts(first);
    throw new Error(`not a quantity of a sketch: ${text}`);
  }
}
