import type { ComponentChildren } from 'preact';
import { useRef } from 'preact/hooks';

interface Props {
  readonly class?: string;
  /** The browser itself says what is wrong with its fields. */
  readonly byBrowser?: boolean;
  readonly onSend: () => unknown;
  readonly children: ComponentChildren;
}

/** Fields with what sends them off. Where one of them is refused, it gets the focus: its problem is read out with it. */
export function Form({ class: like, byBrowser = false, onSend, children }: Props) {
  const form = useRef<HTMLFormElement>(null);
  return (
    <form
      ref={form}
      class={like}
      noValidate={!byBrowser}
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
