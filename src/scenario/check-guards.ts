/** Do guards ask for points, elements, states, values and amounts that the book has? */
import type { ClusterSpec } from '../machine/book.ts';
import type { Delay, Guard, RegionSpec } from '../parts/index.ts';
import { Finder, type Names } from './names.ts';
import type { Problem } from './problem.ts';

interface Site {
  names: Names;
  finder: Finder;
  record: object;
}

/** `settled` guards may ask for volts, amperes and ohms; an element's condition may not, or the network would ask itself. */
function checkGuard(site: Site, path: string, guard: Guard, settled: boolean): void {
  const { names, finder, record } = site;
  if ('all' in guard || 'any' in guard) {
    const [key, list] = 'all' in guard ? ['all', guard.all] : ['any', guard.any];
    for (const [i, inner] of list.entries()) checkGuard(site, `${path}.${key}[${i}]`, inner, settled);
    return;
  }
  if ('not' in guard) {
    checkGuard(site, `${path}.not`, guard.not, settled);
    return;
  }
  if ('region' in guard) {
    if (!finder.known(record, `${path}.region`, guard.region, names.regions, 'region')) return;
    const states = names.regions.get(guard.region) ?? [];
    for (const [i, state] of guard.is.entries()) oneOf(site, `${path}.is[${i}]`, 'unknown-state', state, states);
    return;
  }
  if ('control' in guard) {
    if (!finder.known(record, `${path}.control`, guard.control, names.controls, 'control')) return;
    const values = names.controls.get(guard.control) ?? [];
    for (const [i, value] of guard.is.entries()) oneOf(site, `${path}.is[${i}]`, 'unknown-value', value, values);
    return;
  }
  checkBounds(site, path, guard);
  if ('quantity' in guard) {
    finder.known(record, `${path}.quantity`, guard.quantity, names.quantities, 'quantity');
    return;
  }
  if (!settled) {
    const found = 'volts' in guard ? 'volts' : 'amps' in guard ? 'amps' : 'ohms';
    finder.report(record, path, 'guard-not-settled', found, 'a guard on regions, controls and quantities only');
  }
  if ('amps' in guard) finder.eachKnown(record, `${path}.amps`, guard.amps, names.elements, 'element');
  else if ('volts' in guard) finder.eachKnown(record, `${path}.volts`, guard.volts, names.points, 'point');
  else finder.eachKnown(record, `${path}.ohms`, guard.ohms, names.points, 'point');
}

function oneOf(site: Site, path: string, code: string, found: string, allowed: readonly string[]): void {
  if (!allowed.includes(found)) site.finder.report(site.record, path, code, found, `one of ${allowed.join(', ')}`);
}

function checkBounds(site: Site, path: string, guard: { above?: number; below?: number }): void {
  const { above, below } = guard;
  if (above === undefined && below === undefined) {
    site.finder.report(site.record, path, 'guard-without-bound', 'neither above nor below', 'above, below or both');
  } else if (above !== undefined && below !== undefined && above >= below) {
    site.finder.report(site.record, path, 'empty-range', `above ${above}, below ${below}`, 'above less than below');
  }
}

function checkDelay(site: Site, path: string, delay: Delay | undefined): void {
  if (delay === undefined || typeof delay === 'number') return;
  site.finder.known(site.record, `${path}.element`, delay.element, site.names.elements, 'element');
}

function checkRegion(site: Site, path: string, region: RegionSpec): void {
  const at = (inner: string) => (path === '' ? inner : `${path}.${inner}`);
  oneOf(site, at('initial'), 'unknown-state', region.initial, region.states);
  for (const [i, transition] of region.transitions.entries()) {
    const where = at(`transitions[${i}]`);
    oneOf(site, `${where}.from`, 'unknown-state', transition.from, region.states);
    oneOf(site, `${where}.to`, 'unknown-state', transition.to, region.states);
    checkGuard(site, `${where}.when`, transition.when, true);
    checkDelay(site, `${where}.afterMs`, transition.afterMs);
  }
}

function checkPartGuards(names: Names, finder: Finder): void {
  for (const part of names.book.parts) {
    const site = { names, finder, record: part };
    const elements = 'elements' in part ? part.elements : [];
    for (const [i, element] of elements.entries()) {
      if (element.when !== undefined) checkGuard(site, `elements[${i}].when`, element.when, false);
    }
    const regions = 'regions' in part ? (part.regions ?? []) : [];
    for (const [i, region] of regions.entries()) checkRegion(site, `regions[${i}]`, region);
    const codes = part.kind === 'controller' ? part.codes : [];
    for (const [i, code] of codes.entries()) checkGuard(site, `codes[${i}].when`, code.when, true);
  }
}

function checkCluster(site: Site, cluster: ClusterSpec): void {
  const { names, finder, record } = site;
  finder.known(record, 'part', cluster.part, names.parts, 'part');
  finder.known(record, 'hourMeter', cluster.hourMeter, names.parts, 'part');
  finder.eachKnown(record, 'zones', cluster.zones, names.zones, 'zone');
  checkGuard(site, 'on', cluster.on, true);
  checkGuard(site, 'speed.when', cluster.speed.when, true);
  checkGuard(site, 'speed.measured', cluster.speed.measured, true);
  for (const [i, { part, when }] of cluster.codesOf.entries()) {
    finder.known(record, `codesOf[${i}].part`, part, names.parts, 'part');
    if (when !== undefined) checkGuard(site, `codesOf[${i}].when`, when, true);
  }
  for (const [i, { volts, when }] of cluster.gauges.entries()) {
    finder.eachKnown(record, `gauges[${i}].volts`, volts, names.points, 'point');
    if (when !== undefined) checkGuard(site, `gauges[${i}].when`, when, true);
  }
}

export function checkGuards(names: Names): Problem[] {
  const finder = new Finder(names.origins);
  const { book } = names;
  checkPartGuards(names, finder);
  for (const region of book.regions) checkRegion({ names, finder, record: region }, '', region);
  const engine = { names, finder, record: book.engine };
  checkGuard(engine, 'fires', book.engine.fires, true);
  checkGuard(engine, 'keepsRunning', book.engine.keepsRunning, true);
  for (const o of book.observables) {
    checkGuard({ names, finder, record: o }, 'when', o.when, true);
    if (o.between !== undefined) checkGuard({ names, finder, record: o }, 'between', o.between, true);
  }
  if (book.cluster !== undefined) checkCluster({ names, finder, record: book.cluster }, book.cluster);
  for (const p of book.precautions)
    if (p.needs !== null) checkGuard({ names, finder, record: p }, 'needs', p.needs, true);
  return finder.problems;
}
