/** The width of an element on screen, CSS pixels, so that a drawing can keep its letters at their size. */
import type { RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';

export function useWidth<T extends Element>(first: number): { ref: RefObject<T>; width: number } {
  const ref = useRef<T>(null);
  const [width, setWidth] = useState(first);
  useEffect(() => {
    const { current } = ref;
    if (current === null) return;
    const observer = new ResizeObserver(([entry]) => {
      // Not while it is printed, nor while it is hidden.
      if (entry !== undefined && entry.contentRect.width > 0) setWidth(Math.round(entry.contentRect.width));
    });
    observer.observe(current);
    return () => observer.disconnect();
  }, []);
  return { ref, width };
}
