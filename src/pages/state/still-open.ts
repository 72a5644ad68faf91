/** What is not yet as it should be when a job is closed. */
import { type Action, inCab, isOpen } from '../../job/index.ts';
import { leadName } from '../words/leads.ts';
import { closingName, controlName, inText, pointName, valueName, wireEndName } from '../words/names.ts';
import { doneText } from '../words/precautions.ts';
import { sentence, t } from '../words/words.ts';
import type { Session } from './session.ts';

export interface OpenEnd {
  line: string;
  /** What brings it nearer to its end from where the student stands. */
  remedy?: Action;
}

export function stillOpen(session: Session): OpenEnd[] {
  const { attempt } = session;
  const ends: OpenEnd[] = [
    ...leftOpen(session).map((line) => ({ line })),
    ...(provedSinceWork(session) ? [] : [{ line: t('write.openVerify'), remedy: toProof(session) }]),
    ...(attempt.phase === 'writtenUp' ? [] : [{ line: t('write.openWrite') }]),
  ];
  return ends.map((end) => ({ ...end, line: sentence(end.line) }));
}

/** The proof is made in the cab: there it is done, from elsewhere one walks there first. */
const toProof = ({ book, bench }: Session): Action =>
  inCab(book, bench.zone) ? { do: 'verify' } : { do: 'walk', zone: book.cab[0] };

function leftOpen(session: Session): string[] {
  const { model, book, bench } = session;
  const leads = (['red', 'black'] as const).flatMap((lead) => {
    const point = bench.leads[lead];
    return point === null
      ? []
      : [
          t('write.openLead', {
            lead: leadName(session, lead),
            point: pointName(model, point),
          }),
        ];
  });
  return [
    ...bench.opened
      .filter((id) => isOpen(book, bench, id))
      .map((id) => t('write.openCover', { what: closingName(book, id) })),
    ...bench.unplugged.map((id) => t('write.openPlug', { what: inText(book, id) })),
    ...bench.lifted.map((end) => t('write.openWire', { what: wireEndName(model, end) })),
    ...bench.pulled.map((id) => t('write.openPart', { what: inText(book, id) })),
    ...bench.exchanged.map(([part, other]) =>
      t('write.openSwap', { part: inText(book, part), other: inText(book, other) }),
    ),
    ...leads,
    ...controlsAway(session),
    ...bench.precautions.flatMap((id) => {
      const precaution = book.precautions.find((p) => p.id === id);
      return precaution?.removed === true ? [t('write.openPrecaution', { what: doneText(model, id) })] : [];
    }),
  ];
}

/** The key belongs at off and the disconnect switch on, as the machine goes back to its owner. */
function controlsAway({ book, attempt }: Session): string[] {
  const { world } = attempt.rig;
  return book.controls
    .filter((c) => c.starts === true || c.disconnects !== undefined)
    .filter((c) => world.controlOf(c.id) !== c.initial)
    .map((c) =>
      t('write.openKey', { control: controlName(book, c.id), value: valueName(book, c.id, world.controlOf(c.id)) }),
    );
}

export function provedSinceWork({ attempt }: Session): boolean {
  const kinds = attempt.records.map((r) => r.entry.action.do);
  return kinds.lastIndexOf('verify') > kinds.lastIndexOf('repair');
}

export const workedSinceArrival = (session: Session): boolean =>
  session.attempt.records.some(({ entry: { action } }) => action.do === 'repair' || putsRight(session, action));

/** A handle that was found in the wrong place goes where it belongs. */
function putsRight({ job, book }: Session, action: Action): boolean {
  if (action.do !== 'operate') return false;
  const found = job.arrival.controls?.[action.control];
  const usual = book.controls.find((c) => c.id === action.control)?.initial;
  return found !== undefined && found !== usual && action.value === usual;
}
