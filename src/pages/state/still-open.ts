/** What is not yet as it should be when a job is closed. */
import { isOpen } from '../../job/index.ts';
import { controlName, inText, pointName, targetName, valueName, wireEndName } from '../words/names.ts';
import { doneText } from '../words/precautions.ts';
import { sentence, t } from '../words/words.ts';
import type { Session } from './session.ts';

export function stillOpen(session: Session): string[] {
  const { model, book, bench, attempt } = session;
  const leads = (['red', 'black'] as const).flatMap((lead) => {
    const point = bench.leads[lead];
    return point === null
      ? []
      : [
          t('write.openLead', {
            lead: lead === 'red' ? t('write.leadRed') : t('write.leadBlack'),
            point: pointName(model, point),
          }),
        ];
  });
  return [
    ...bench.opened
      .filter((id) => isOpen(book, bench, id))
      .map((id) => t('write.openCover', { what: targetName(model, id) })),
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
    ...(provedSinceWork(session) ? [] : [t('write.openVerify')]),
    ...(attempt.phase === 'writtenUp' ? [] : [t('write.openWrite')]),
  ].map(sentence);
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

function provedSinceWork({ attempt }: Session): boolean {
  const kinds = attempt.records.map((r) => r.entry.action.do);
  return kinds.lastIndexOf('verify') > kinds.lastIndexOf('repair');
}
