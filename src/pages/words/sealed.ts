/** Sealed plugs: which of their pins no probe gets at while they are together, and what to do instead. */
import type { Session } from '../state/session.ts';
import { inText, sideName } from './names.ts';
import { sentence, t } from './words.ts';

/** The plug that keeps a probe from a point of this place; null where nothing does. */
export function sealOf({ attempt }: Session, point: string): string | null {
  const refusal = attempt.refusal({ do: 'lead', lead: 'red', point });
  return refusal?.code === 'must-be-parted' ? refusal.what : null;
}

/** Points of a plug that are sealed now, and whether others of it are free. */
export function sealedAt(session: Session, connector: string): { sealed: string[]; some: boolean } {
  const spec = session.book.connectors.find((c) => c.id === connector);
  const sides = spec?.kind === 'inline' ? ['a', 'b'] : ['a'];
  const all = (spec?.pins ?? []).flatMap((pin) => sides.map((side) => `${connector}.${pin.pin}.${side}`));
  const sealed = all.filter((point) => sealOf(session, point) !== null);
  return { sealed, some: sealed.length < all.length };
}

/** Why no probe gets there, and the two ways out. */
export function sealText(session: Session, plug: string): string {
  const { model, book } = session;
  const what = inText(book, plug);
  const spec = book.connectors.find((c) => c.id === plug);
  const { sealed, some } = sealedAt(session, plug);
  const [, pin = '', side] = sealed[0]?.split('.') ?? [];
  const name = spec === undefined || !some ? '' : sideName(model, spec, pin, side);
  return sentence(name === '' ? t('here.sealedWhy', { what }) : t('here.sealedSide', { what, side: name }));
}
