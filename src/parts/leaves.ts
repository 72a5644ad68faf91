import type { Guard } from './spec.ts';

/** The conditions that a guard is made of. */
export function leavesOf(guard: Guard): Exclude<Guard, { all: Guard[] } | { any: Guard[] } | { not: Guard }>[] {
  if ('all' in guard) return guard.all.flatMap(leavesOf);
  if ('any' in guard) return guard.any.flatMap(leavesOf);
  return 'not' in guard ? leavesOf(guard.not) : [guard];
}
