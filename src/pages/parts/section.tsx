/** A part of a list that can be folded up; its heading stays a heading. */
import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';

interface Props {
  id: string;
  title: string;
  folded?: boolean;
  /** Unfolds it whenever it changes to another number but 0. */
  reveal?: number;
  children: ComponentChildren;
}

export function Section({ id, title, folded = false, reveal = 0, children }: Props) {
  const [open, setOpen] = useState(!folded);
  useEffect(() => {
    if (reveal !== 0) setOpen(true);
  }, [reveal]);
  return (
    <section aria-labelledby={id}>
      <h3 class="section-title">
        <button type="button" class="section-head" id={id} aria-expanded={open} onClick={() => setOpen(!open)}>
          {title}
        </button>
      </h3>
      {open ? children : null}
    </section>
  );
}
