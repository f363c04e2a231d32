import type { ComponentChildren, Ref } from 'preact';

interface Props {
  /** How much it stands out; `stop` for what can't be undone. */
  readonly kind?: 'main' | 'plain' | 'stop' | undefined;
  /** What it does; without it, it sends its form off. */
  readonly onPress?: () => unknown;
  /** What it began is under way: it can't be pressed again meanwhile, and says so where there are words for it. */
  readonly busy?: boolean;
  readonly meanwhile?: string;
  readonly disabled?: boolean;
  /** What it is called, where what stands on it isn't enough by itself. */
  readonly label?: string;
  readonly at?: Ref<HTMLButtonElement>;
  readonly children: ComponentChildren;
}

/** A button, and what it says while it is waited for. */
export const Button = ({
  kind,
  onPress,
  busy = false,
  meanwhile,
  disabled = false,
  label,
  at,
  children,
}: Props) => (
  <button
    ref={at ?? null}
    type={onPress ? 'button' : 'submit'}
    class={kind ? `button ${kind}` : 'button'}
    disabled={busy || disabled}
    aria-label={label}
    onClick={onPress}
  >
    {(busy && meanwhile) || children}
  </button>
);
