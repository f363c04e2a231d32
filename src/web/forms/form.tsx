import type { ComponentChildren } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { type Act, useAct } from './act.ts';

type Problems = Readonly<Record<string, string | undefined>>;

/** Fields that may be wrong. Nothing is said of them until they are sent off, and they aren't sent while one of them is. */
export interface Filling<P extends Problems> {
  readonly act: Act;
  /** What is wrong, by field, once it has been looked at. */
  readonly told: Partial<P>;
  /** Sends what was filled in, where nothing is wrong with it. */
  send(work: () => Promise<unknown>): void;
  /** It is empty again, and nothing is said of that. */
  anew(): void;
}

export function useForm<P extends Problems>(problems: P): Filling<P> {
  const act = useAct();
  const [looked, setLooked] = useState(false);
  return {
    act,
    told: looked ? problems : {},
    send(work) {
      setLooked(true);
      if (Object.values(problems).every((problem) => problem === undefined)) act.run(work);
    },
    anew: () => setLooked(false),
  };
}

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
