/** The service manual, made from the book: chapters of texts and tables. It gives limits, never this machine's readings. */
import { once } from '../../circuit/index.ts';
import type { Book, ConnectorSpec, Model } from '../../machine/index.ts';
import { printedName, sideName, wireName, zoneName } from '../words/names.ts';
import { plain, wireOff } from '../words/plain.ts';
import { sentence, t, textsOf, wordFor } from '../words/words.ts';

export interface Leaf {
  id: string;
  title: string;
  text?: string;
  head?: string[];
  rows?: string[][];
}

export type ChapterId =
  | 'cautions'
  | 'howItWorks'
  | 'locations'
  | 'access'
  | 'connectors'
  | 'fuses'
  | 'relays'
  | 'limits'
  | 'codes'
  | 'torques'
  | 'wires'
  | 'controllers'
  | 'words';

export interface Chapter {
  id: ChapterId;
  leaves: Leaf[];
}

export const chapters: (model: Model) => Chapter[] = once(write);

function write(model: Model): Chapter[] {
  const { book } = model;
  const isCaution = (id: string): boolean => id.startsWith('caution');
  const texts = (caution: boolean): Leaf[] =>
    book.manual
      .filter((s) => isCaution(s.id) === caution)
      .map(({ id, title, text }) =>
        caution ? { id, title: plain(model, title), text: plain(model, text) } : { id, title, text },
      );
  return [
    { id: 'cautions', leaves: texts(true) },
    { id: 'howItWorks', leaves: texts(false) },
    { id: 'locations', leaves: book.zones.map((z) => location(book, z.id)) },
    { id: 'access', leaves: [accessTable(book)] },
    { id: 'connectors', leaves: book.connectors.map((c) => face(model, c)) },
    { id: 'fuses', leaves: [fuseTable(model)] },
    { id: 'relays', leaves: [relayTable(book)] },
    { id: 'limits', leaves: limitTables(model) },
    { id: 'codes', leaves: codeTables(book) },
    { id: 'torques', leaves: [torqueTable(book)] },
    { id: 'wires', leaves: [wireTable(model)] },
    { id: 'controllers', leaves: controllerTables(book) },
    { id: 'words', leaves: [wordTable(), modeTable()] },
  ];
}

function location(book: Book, zone: string): Leaf {
  const step = (id: string): string => book.access.find((a) => a.id === id)?.step ?? id;
  const things = [...book.parts, ...book.connectors].filter((x) => x.zone === zone);
  return {
    id: `zone-${zone}`,
    title: `${zone}: ${zoneName(book, zone)}`,
    head: [t('manual.part'), t('manual.name'), t('manual.cover')],
    rows: things.map((x) => [x.id, x.name, step(x.access)]),
  };
}

function accessTable(book: Book): Leaf {
  return {
    id: 'access',
    title: t('manual.access'),
    head: [t('manual.cover'), t('manual.fasteners'), t('manual.minutes'), t('manual.toOpen'), t('manual.toWork')],
    rows: book.access
      .filter((a) => a.openMinutes > 0)
      .map((a) => [a.step, a.fasteners, `${a.openMinutes} / ${a.closeMinutes}`, a.toOpenText, a.toWorkText]),
  };
}

/** What lies beyond a pin on one side: the wire's other end, or the device. */
function beyond(model: Model, connector: ConnectorSpec, pin: ConnectorSpec['pins'][number], side: 'a' | 'b'): string {
  const wire = model.wires.get(side === 'a' ? pin.a : pin.b);
  if (wire === undefined) return side === 'b' ? printedName(pin.b) : '';
  const own = connector.kind === 'inline' || side === 'a' ? `${connector.id}.${pin.pin}.${side}` : '';
  const far = wire.from === own ? wire.to : wire.from;
  return `${wireName(wire)} → ${printedName(far)}`;
}

function face(model: Model, connector: ConnectorSpec): Leaf {
  const { id, name, zone, cavities, sealed, kind } = connector;
  const first = connector.pins[0]?.pin ?? '';
  const head = (side: 'a' | 'b'): string => {
    if (kind === 'device') return t(side === 'a' ? 'manual.sideWire' : 'manual.sideDevice');
    return t('manual.side', { harness: sideName(model, connector, first, side) });
  };
  const probe = (to: boolean | 'a'): string =>
    to === true ? t('manual.probeYes') : to === 'a' ? head('a') : t('manual.probeNo');
  return {
    id,
    title: t('manual.connectorLine', {
      id,
      name,
      place: zoneName(model.book, zone),
      cavities,
      sealed: sealed ? t('manual.sealed') : '',
    }),
    head: [t('manual.pin'), head('a'), head('b'), t('manual.probe')],
    rows: connector.pins.map((pin) => [
      pin.pin,
      beyond(model, connector, pin, 'a'),
      beyond(model, connector, pin, 'b'),
      probe(pin.backProbe),
    ]),
  };
}

function fuseTable(model: Model): Leaf {
  const { book } = model;
  const feeds = (id: string): string =>
    book.wires
      .filter((w) => w.from === `${id}.b` || w.to === `${id}.b`)
      .map(wireName)
      .join(', ');
  return {
    id: 'fuses',
    title: t('manual.fuses'),
    head: [t('manual.fuse'), t('manual.rating'), t('manual.name'), t('manual.feeds'), t('manual.where')],
    rows: book.parts.flatMap((p) =>
      p.kind === 'fuse'
        ? [[p.id, t('manual.amps', { amps: p.ratingAmps }), p.name, feeds(p.id), zoneName(book, p.zone)]]
        : [],
    ),
  };
}

function relayTable(book: Book): Leaf {
  return {
    id: 'relays',
    title: t('manual.relays'),
    head: [t('manual.part'), t('manual.name'), t('manual.type'), t('manual.coil'), t('manual.where'), t('manual.what')],
    rows: book.parts.flatMap((p) =>
      p.kind === 'relay'
        ? [
            [
              p.id,
              p.name,
              p.type,
              `${Math.round(p.coilOhms)} Ω, ${p.coil.join('-')}`,
              zoneName(book, p.zone),
              p.note ?? '',
            ],
          ]
        : [],
    ),
  };
}

function limitTables({ book }: Model): Leaf[] {
  const kinds = [...new Set(book.limits.map((l) => l.kind))].filter((kind) => kind !== 'torque');
  return kinds.map((kind) => ({
    id: `limits-${kind}`,
    title: kind.slice(0, 1).toUpperCase() + kind.slice(1),
    head: [t('manual.where'), t('manual.what'), t('manual.limit'), t('manual.condition')],
    rows: book.limits.filter((l) => l.kind === kind).map((l) => [l.where, wireOff(l.what), l.limit, l.condition]),
  }));
}

/** `3 Voltage too high`; the numbers that the standard reserves stand alone. */
function failureMode(fmi: number): string {
  const number = String(fmi);
  const words = wordFor('fmi', number);
  return words === number ? number : `${number} ${words}`;
}

function codeTables(book: Book): Leaf[] {
  return book.parts.flatMap((p) =>
    p.kind === 'controller'
      ? [
          {
            id: `codes-${p.id}`,
            title: `${p.id} ${p.name}`,
            head: [t('manual.code'), t('manual.spn'), t('manual.fmi'), t('manual.text')],
            rows: p.codes.map((c) => [c.code, String(c.spn), failureMode(c.fmi), c.text]),
          },
        ]
      : [],
  );
}

function torqueTable(book: Book): Leaf {
  const name = (id: string): string => book.parts.find((p) => p.id === id)?.name ?? '';
  return {
    id: 'torques',
    title: t('manual.torques'),
    head: [t('manual.where'), t('manual.what'), t('manual.limit')],
    rows: [
      ...book.limits.filter((l) => l.kind === 'torque').map((l) => [l.where, l.what, l.limit]),
      ...book.grounds.map((g) => [g.part, name(g.part), g.torque]),
    ],
  };
}

function wireTable(model: Model): Leaf {
  return {
    id: 'wires',
    title: t('manual.wires'),
    head: [t('manual.wire'), t('manual.color'), t('manual.size'), t('manual.from'), t('manual.to')],
    rows: model.book.wires.map((w) => [
      w.id,
      `${w.colour} ${wordFor('colours', w.colour)}`,
      String(w.mm2),
      printedName(w.from),
      printedName(w.to),
    ]),
  };
}

function controllerTables(book: Book): Leaf[] {
  return book.parts.flatMap((p) =>
    p.kind === 'controller' && p.pins !== undefined
      ? [
          {
            id: `pins-${p.id}`,
            title: `${p.id} ${p.name}`,
            head: [t('manual.terminal'), t('manual.name'), t('manual.type'), t('manual.thresholds'), t('manual.logic')],
            rows: p.pins.map((pin) => [pin.terminal, pin.name, pin.type, pin.thresholds ?? '', pin.logic ?? '']),
          },
        ]
      : [],
  );
}

/** Signs that stand on drawings and in tables without a name beside them. */
function wordTable(): Leaf {
  return {
    id: 'words',
    title: t('manual.words'),
    head: [t('manual.sign'), t('manual.text')],
    rows: textsOf('signs').map(([sign, text]) => [sign, text]),
  };
}

/** Ways to fail, as the write-up lists them. */
function modeTable(): Leaf {
  return {
    id: 'modes',
    title: t('manual.modes'),
    head: [t('manual.mode'), t('manual.text')],
    rows: textsOf('modeNotes').map(([mode, text]) => [sentence(wordFor('modes', mode)), text]),
  };
}
