/** Every combination of one value from each list, first list slowest. */
export function combinations<T>(...lists: readonly (readonly T[])[]): T[][] {
  return lists.reduce<T[][]>((all, list) => all.flatMap((some) => list.map((value) => [...some, value])), [[]]);
}

/** A fixed choice of `count` from a list: the same numbers on every run (linear congruential, Numerical Recipes). */
export function sample<T>(list: readonly T[], count: number, start: number): T[] {
  const left = [...list];
  const chosen: T[] = [];
  let state = start;
  while (chosen.length < count && left.length > 0) {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    chosen.push(...left.splice(Math.floor((state / 2 ** 32) * left.length), 1));
  }
  return chosen;
}
