/** A cause as the trade writes it: which wire from where to where, or which part, and how it failed. */
import type { Model } from '../../machine/index.ts';
import { bareName, modeName, targetName, wireName } from '../words/names.ts';
import { sentence, t } from '../words/words.ts';

export function causeText(model: Model, at: string, mode: string): string {
  const wire = at.startsWith('W:') ? model.wires.get(at.slice(2)) : undefined;
  if (wire === undefined)
    return sentence(t('review.cause.other', { what: targetName(model, at), mode: modeName(mode) }));
  return sentence(
    t('review.cause.wire', {
      wire: wireName(wire),
      from: endName(model, wire.from),
      to: endName(model, wire.to),
      mode: modeName(mode),
    }),
  );
}

/** A wire ends on a pin; which side of the plug goes without saying. */
function endName(model: Model, end: string): string {
  return bareName(model, end.split('.').slice(0, 2).join('.'));
}
