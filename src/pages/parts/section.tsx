/** A part of a list that can be folded up; its heading stays a heading. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';

interface Props {
  id: string;
  title: string;
  folded?: boolean;
  children: ComponentChildren;
}

export function Section({ id, title, folded = false, children }: Props) {
  const [open, setOpen] = useState(!folded);
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
