/** A finding as sentences that a student understands: what happened, and what would have been better. */
import type { Finding, FindingCode } from '../../grading/index.ts';
import type { Model } from '../../machine/index.ts';
import type { Session } from '../state/session.ts';
import { money } from '../state/settings.ts';
import { closingName, modeName, targetName } from '../words/names.ts';
import { doneText, toDoText, whyText } from '../words/precautions.ts';
import { stopped, t } from '../words/words.ts';
import { causeText } from './cause-text.ts';
import { didText } from './moments.ts';

const text = ({ params }: Finding, name: string): string => String(params[name] ?? '');
const words = (list: string): string[] => list.split(' ').filter((word) => word !== '');

export function findingText(session: Session, finding: Finding): string {
  const { model, job } = session;
  const { params, entry } = finding;
  const named = (name: string): string => {
    const id = text(finding, name);
    return id === '' ? '' : theTarget(model, id);
  };
  const record = entry === null ? undefined : session.attempt.records[entry];
  const cause = text(finding, 'cause');
  return t(`review.said.${pattern(finding, job.causes)}`, {
    did: entry === null ? '' : stopped(didText(session, entry)),
    left: text(finding, 'left'),
    before: text(finding, 'before'),
    verbed: verbed(text(finding, 'verb')),
    target: named('target'),
    sure: text(finding, 'sure'),
    cost: money(record?.cost.price ?? 0),
    bill: money(Number(params.bill ?? 0)),
    par: money(Number(params.par ?? 0)),
    what: words(text(finding, 'what'))
      .map((id) => standing(session, id))
      .join('; '),
    cause: cause === '' ? t('write.causeNone') : named('cause'),
    mode: modeName(text(finding, 'mode')),
  });
}

/** A wire has its number for a name; everything else is one of a kind. */
const theTarget = (model: Model, id: string): string =>
  id.startsWith('W:') ? targetName(model, id) : t('names.the', { what: targetName(model, id) });

type Pattern = FindingCode | 'explain-unproved' | 'explain-proved' | 'cause-half' | 'cause-none';

function pattern(finding: Finding, causes: readonly { at: string }[]): Pattern {
  const explained = text(finding, 'verb') === 'explain';
  if (finding.code === 'repair-unproved' && explained) return 'explain-unproved';
  if (finding.code === 'proved' && explained) return 'explain-proved';
  if (finding.code === 'cause-wrong' && text(finding, 'cause') === '') return 'cause-none';
  const half = finding.code === 'cause-wrong' && causes.some((c) => c.at === finding.params.cause);
  return half ? 'cause-half' : finding.code;
}

/** What would have been better; null where the sentence has said it already. */
export function adviceText(session: Session, finding: Finding): string | null {
  const { model, job } = session;
  const [cause] = job.causes;
  const named = cause === undefined ? '' : `${causeText(model, cause.at, cause.mode)}.`;
  switch (finding.code) {
    case 'precaution-missing':
    case 'critical-missing':
      return bookText(session, finding);
    case 'told-nothing':
    case 'asked-twice':
      return t('review.advice.split', { count: Number(finding.params.left ?? 0) });
    case 'ohms-live':
      return t('review.advice.ohms');
    case 'jack-fuse':
      return t('review.advice.jack');
    case 'no-tests':
      return t('review.advice.noTests');
    case 'fuse-again':
      return t('review.advice.fuseAgain');
    case 'repair-unproved':
    case 'repair-lucky':
    case 'repair-needless':
      return proof(session, finding);
    case 'not-mended':
      return t('review.advice.find', { cause: named });
    case 'wrong-ending':
      return t('review.advice.ending', { ending: t(`write.${job.ending}`) });
    case 'over-par':
      return t('review.advice.bill');
    case 'not-verified':
      return t('review.advice.verify');
    case 'interlocks-not-tried':
      return t('review.advice.interlocks');
    case 'left-open':
      return t('review.advice.putBack');
    case 'cause-wrong':
      return t('review.advice.cause', { cause: named });
    case 'no-write-up':
      return t('review.advice.writeUp');
    default:
      return null;
  }
}

/** How this kind of thing is proved bad before it is touched. */
function proof({ model }: Session, finding: Finding): string {
  const id = text(finding, 'target');
  const values = { target: theTarget(model, id) };
  if (text(finding, 'verb') === 'explain') return t('review.advice.explain', values);
  if (id.startsWith('W:')) return t('review.advice.proveWire', values);
  if (id.startsWith('X:')) return t('review.advice.provePin', values);
  const source = model.elements.some((e) => e.owner === id && e.law.kind === 'battery');
  return source ? t('review.advice.proveBattery', values) : t('review.advice.provePart', values);
}

/** The book's own words: why the check is made, and the precautions that were missing. */
function bookText({ model }: Session, finding: Finding): string {
  const why = whyText(model, text(finding, 'check'));
  const missing = words(text(finding, 'missing')).map((id) => toDoText(model, id));
  return [...(why === null ? [] : [why]), ...missing].join(' ');
}

function verbed(verb: string): string {
  switch (verb) {
    case 'clean':
    case 'tighten':
    case 'adjust':
    case 're-pin':
    case 'splice':
    case 'replace-cable':
    case 'reroute':
    case 'charge':
    case 'replace':
    case 'fuse':
      return t(`review.verbed.${verb}`);
    default:
      return verb;
  }
}

const standing = ({ book, model }: Session, id: string): string => {
  if (book.precautions.some((p) => p.id === id)) return doneText(model, id).replace(/\.$/, '');
  return book.access.some((a) => a.id === id) ? closingName(book, id) : targetName(model, id);
};
