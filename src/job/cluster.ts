/** What stands on the instrument cluster: tell-tales, code line, needles, engine speed. All of it from the machine's state. */
import {
  type Book,
  type ClusterSpec,
  compileGuard,
  type GaugeSpec,
  type Model,
  type ObservableSpec,
  type World,
} from '../machine/index.ts';
import type { Guard, PartSpec } from '../parts/index.ts';

/** Before the code in the code of the observation: `shows:P12`. */
export const SHOWS = 'shows:';
/** Engine speed is shown in steps of this, rpm. */
const RPM_STEP = 10;

/** Each fault code as something to be seen: the cluster is on, hears its controller, and the code's rule still holds. */
export function codeLine({ book }: Pick<Model, 'book'>): ObservableSpec[] {
  const { cluster } = book;
  if (cluster === undefined) return [];
  return heardControllers(book, cluster).flatMap(({ codes, answers }) =>
    codes.map((code): ObservableSpec => {
      const stored: Guard = { region: code.code, is: ['stored'] };
      const all = [...answers, stored, code.when];
      return { code: SHOWS + code.code, text: code.text, zones: cluster.zones, kind: 'seen', when: { all } };
    }),
  );
}

interface Heard {
  codes: Extract<PartSpec, { kind: 'controller' }>['codes'];
  /** The cluster is on and hears this controller, which it can only do while that one is awake. */
  answers: Guard[];
}

const heardControllers = (book: Book, cluster: ClusterSpec): Heard[] =>
  cluster.codesOf.flatMap(({ part: id, when }) => {
    const part = book.parts.find((p) => p.id === id);
    return part?.kind === 'controller'
      ? [{ codes: part.codes, answers: [cluster.on, ...(when === undefined ? [] : [when])] }]
      : [];
  });

/** Where codes are read, nothing answers: the cluster has no supply. */
export const NO_ANSWER = 'no-answer';

/** Controllers whose codes can be read at the cluster now; null where none answers. */
export function answeringControllers(world: World): Heard[] | null {
  const { book } = world.model;
  if (book.cluster === undefined) return null;
  const heard = heardControllers(book, book.cluster).filter(({ answers }) => holds(world, { all: answers }));
  return heard.length === 0 ? null : heard;
}

export interface TellTale {
  id: string;
  name: string;
  lit: boolean;
}

/** What the display shows; null where the cluster is dark. */
export interface Display {
  codes: string[];
  /** Shares of full deflection; a needle that is left out rests. */
  needles: Record<string, number>;
  /** Null where the cluster does not hear the engine controller. */
  rpm: number | null;
}

/** Lamps with wires of their own light whether the cluster is on or not. */
export function tellTales(model: Model, seen: readonly string[]): TellTale[] {
  return model.book.observables.flatMap(({ code, lamp }) =>
    lamp === undefined ? [] : [{ ...lamp, lit: seen.includes(code) }],
  );
}

export function displayOf(world: World, seen: readonly string[]): Display | null {
  const { cluster } = world.model.book;
  if (cluster === undefined || !holds(world, cluster.on)) return null;
  const needles = cluster.gauges.flatMap((gauge): [string, number][] => {
    const share = deflection(world, gauge);
    return share === null ? [] : [[gauge.id, share]];
  });
  const codes = seen.filter((code) => code.startsWith(SHOWS)).map((code) => code.slice(SHOWS.length));
  return { codes, needles: Object.fromEntries(needles), rpm: speed(world, cluster) };
}

const holds = (world: World, guard: Guard): boolean => compileGuard(world.model, guard)(world);

function speed(world: World, cluster: ClusterSpec): number | null {
  if (!holds(world, cluster.speed.when)) return null;
  const rpm = holds(world, cluster.speed.measured) ? world.quantityOf('rpm') : 0;
  return Math.round(rpm / RPM_STEP) * RPM_STEP;
}

/** Straight lines between the marks of its scale; null while it does not know, or beyond the scale's ends by half a volt. */
function deflection(world: World, { volts: [red, black], scale, when }: GaugeSpec): number | null {
  if (when !== undefined && !holds(world, when)) return null;
  const volts = world.voltsBetween(red, black);
  const [first, last] = [scale[0], scale[scale.length - 1]];
  if (volts < first[0] - BEYOND_VOLTS || volts > last[0] + BEYOND_VOLTS) return null;
  if (volts <= first[0]) return first[1];
  const upper = scale.findIndex(([v]) => v >= volts);
  if (upper < 1) return last[1];
  const [[v0, s0], [v1, s1]] = [scale[upper - 1], scale[upper]];
  return s0 + ((volts - v0) / (v1 - v0)) * (s1 - s0);
}

/** A sender that is shorted or open stands this far outside its scale or more, volts. */
const BEYOND_VOLTS = 0.15;
