/** What hangs together, whatever the nodes are called. */
export function reachedFrom<T>(start: T, pairs: Iterable<readonly [T, T]>): Set<T> {
  const beside = new Map<T, T[]>();
  const link = (a: T, b: T): void => {
    const known = beside.get(a) ?? [];
    known.push(b);
    beside.set(a, known);
  };
  for (const [a, b] of pairs) {
    link(a, b);
    link(b, a);
  }
  const reached = new Set<T>([start]);
  for (const node of reached) for (const next of beside.get(node) ?? []) reached.add(next);
  return reached;
}
