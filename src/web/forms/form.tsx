import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';

/** Fields with what sends them off. Where one of them is refused, it gets the focus: its problem is read out with it. */
export function Form({ onSend, children }: { onSend: () => unknown; children: ComponentChildren }) {
  const form = useRef<HTMLFormElement>(null);
  return (
    <form
      ref={form}
      noValidate
      onSubmit={(event) => {
        event.preventDefault();
        onSend();
        requestAnimationFrame(() => form.current?.querySelector<HTMLElement>('[aria-invalid]')?.focus());
      }}
    >
      {children}
    </form>
  );
}
