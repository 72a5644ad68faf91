/** A sheet over the page: focus goes in, stays in, and comes back; Escape closes. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { t } from '../words/words.ts';

interface Props {
  title: string;
  onClose: () => void;
  children: ComponentChildren;
}

export function Dialog({ title, onClose, children }: Props) {
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    const dialog = ref.current;
    dialog?.showModal();
    return () => dialog?.close();
  }, []);
  return (
    <dialog class="sheet-dialog paper" ref={ref} aria-labelledby="dialog-title" onCancel={onClose} onClose={onClose}>
      <header class="sheet-head">
        <h2 id="dialog-title">{title}</h2>
        <button type="button" class="plain" onClick={onClose}>
          {t('app.close')}
        </button>
      </header>
      <div class="sheet-body">{children}</div>
    </dialog>
  );
}
