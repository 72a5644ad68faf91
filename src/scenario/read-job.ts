/** Reads a job: its shape, then everything that it names in the machine's book, then whether it can be done safely. */

import { type JobSpec, SHOWS } from '../job/index.ts';
import type { Model } from '../machine/index.ts';
import type { Change } from '../parts/index.ts';
import { type NamedIn, namesIn } from './change-names.ts';
import { problemsOf } from './issue.ts';
import { type Problem, shown } from './problem.ts';
import { jobFile } from './schema-job.ts';
import { soundWayProblems } from './solve-job.ts';

export type JobResult = { ok: true; job: JobSpec } | { ok: false; problems: Problem[] };

/** A job's own text, checked against a machine. `deep` also works through its sound way, which takes a second. */
export function readJob(model: Model, file: string, value: unknown, deep = false): JobResult {
  const parsed = jobFile.safeParse(value);
  if (!parsed.success) return { ok: false, problems: problemsOf(file, value, parsed.error.issues) };
  const { $schema: _, ...job } = parsed.data;
  const problems = namesOf(model, job)
    .filter(({ known, name }) => !known(name))
    .map(
      ({ path, name, what }): Problem => ({
        file,
        path,
        code: `unknown-${what}`,
        found: shown(name),
        expected: `${/^[aeiou]/.test(what) ? 'an' : 'a'} ${what} of ${model.book.id}`,
      }),
    );
  if (problems.length === 0 && deep) problems.push(...soundWayProblems(model, job, file));
  return problems.length === 0 ? { ok: true, job } : { ok: false, problems };
}

interface Name {
  path: string;
  name: string;
  what: string;
  known: (name: string) => boolean;
}

/** Every name of the book that a job uses, with its place in the file. */
function namesOf(model: Model, job: JobSpec): Name[] {
  const { book } = model;
  const names: Name[] = [];
  const say: Say = (path, name, what, known) => {
    names.push({ path, name, what, known });
  };
  const isPart = (id: string) => book.parts.some((p) => p.id === id);
  const isControl = (id: string) => model.controlIndex.has(id);
  const isPosition = (control: string) => (value: string) =>
    book.controls.find((c) => c.id === control)?.values.includes(value) ?? false;
  const isTarget = (id: string) => isPart(id) || model.elementIndex.has(id);
  const isCode = (code: string) =>
    book.observables.some((o) => o.code === code) ||
    (code.startsWith(SHOWS) && model.regionIndex.has(code.slice(SHOWS.length))) ||
    /^(clunk|chatter|click:|buzz:)/.test(code);
  say('machine', job.machine, 'machine', (id) => id === book.id);
  for (const [control, value] of Object.entries(job.arrival.controls ?? {})) {
    say(`arrival.controls.${control}`, control, 'control', isControl);
    if (isControl(control)) say(`arrival.controls.${control}`, value, 'position', isPosition(control));
  }
  for (const quantity of Object.keys(job.arrival.quantities ?? {}))
    say(`arrival.quantities.${quantity}`, quantity, 'quantity', (q) => model.quantityIndex.has(q));
  for (const [region, state] of Object.entries(job.arrival.regions ?? {})) {
    say(`arrival.regions.${region}`, region, 'region', (r) => model.regionIndex.has(r));
    if (model.regionIndex.has(region)) say(`arrival.regions.${region}`, state, 'state', isStateOf(model, region));
  }
  job.faults.forEach((fault, i) => {
    say(`faults[${i}].at`, fault.at, 'target', isTarget);
    for (const [k, change] of fault.changes.entries()) sayChange(model, change, `faults[${i}].changes[${k}]`, say);
    for (const [k, verb] of fault.cures.entries()) {
      say(`faults[${i}].cures[${k}]`, verb, 'repair', (v) => book.repairs.some((r) => r.id === v));
    }
  });
  const isConnector = (id: string) => book.connectors.some((c) => c.id === id);
  const isPlace = (id: string) => isTarget(id) || isConnector(id) || book.zones.some((z) => z.id === id);
  job.signs.forEach((sign, i) => {
    say(`signs[${i}].at`, sign.at, 'target', isPlace);
    if (sign.of !== undefined) say(`signs[${i}].of`, sign.of, 'target', isTarget);
    if (sign.parted !== undefined)
      say(`signs[${i}].parted`, sign.parted, 'part', (id) => isPart(id) || isConnector(id));
    say(`signs[${i}].zone`, sign.zone, 'zone', (z) => book.zones.some((zone) => zone.id === z));
    if (sign.under !== undefined)
      say(`signs[${i}].under`, sign.under, 'access', (a) => book.access.some((step) => step.id === a));
  });
  job.complaint.forEach((symptom, i) => {
    for (const [k, [control, value]] of symptom.controls.entries()) {
      say(`complaint[${i}].controls[${k}][0]`, control, 'control', isControl);
      if (isControl(control)) say(`complaint[${i}].controls[${k}][1]`, value, 'position', isPosition(control));
    }
    for (const part of ['seen', 'missing'] as const) {
      for (const [k, code] of symptom[part].entries()) say(`complaint[${i}].${part}[${k}]`, code, 'observable', isCode);
    }
  });
  for (const [i, cause] of job.causes.entries()) say(`causes[${i}].at`, cause.at, 'target', isTarget);
  say('wrongSwap', job.wrongSwap, 'part', isPart);
  return names;
}

const isStateOf = (model: Model, region: string) => (state: string) =>
  model.regions.find((r) => r.id === region)?.states.includes(state) ?? false;

type Say = (path: string, name: string, what: string, known: (name: string) => boolean) => void;

function sayChange(model: Model, change: Change, path: string, say: Say): void {
  const known: Record<NamedIn, (name: string) => boolean> = {
    element: (e) => model.elementIndex.has(e),
    region: (r) => model.regionIndex.has(r),
    quantity: (q) => model.quantityIndex.has(q),
    point: (p) => p === model.book.reference || model.pointIndex.has(p),
    wire: (w) => model.wires.has(w),
  };
  for (const [field, name, what] of namesIn(change)) say(`${path}.${field}`, name, what, known[what]);
  if (change.kind === 'stuck' && model.regionIndex.has(change.region))
    say(`${path}.state`, change.state, 'state', isStateOf(model, change.region));
}
