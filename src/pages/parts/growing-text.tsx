/** A box for words that is as high as what stands in it. */
import { useLayoutEffect, useRef } from 'preact/hooks';

interface Props {
  label: string;
  value: string;
  onText: (text: string) => void;
}

export function GrowingText({ label, value, onText }: Props) {
  const ref = useRef<HTMLTextAreaElement>(null);
  useLayoutEffect(() => {
    const box = ref.current;
    if (box === null) return;
    box.style.height = 'auto';
    // Its edges belong to its height, not to that of its content.
    box.style.height = `${box.scrollHeight + box.offsetHeight - box.clientHeight}px`;
  }, [value]);
  return (
    <label class="field">
      <span>{label}</span>
      <textarea rows={3} ref={ref} value={value} onInput={(event) => onText(event.currentTarget.value)} />
    </label>
  );
}
