/** A value that screens watch: the only machinery of state that the pages have. */
import { useEffect, useState } from 'preact/hooks';

export class Observable<T> {
  private readonly watchers = new Set<() => void>();

  constructor(private current: T) {}

  get value(): T {
    return this.current;
  }

  set(next: T): void {
    this.current = next;
    for (const watcher of [...this.watchers]) watcher();
  }

  update(change: Partial<T>): void {
    this.set({ ...this.current, ...change });
  }

  watch(watcher: () => void): () => void {
    this.watchers.add(watcher);
    return () => this.watchers.delete(watcher);
  }
}

/** The present value; the component is drawn again when it changes. */
export function useObservable<T>(source: Observable<T>): T {
  const [, redraw] = useState(0);
  useEffect(() => source.watch(() => redraw((n) => n + 1)), [source]);
  return source.value;
}
