import type { ComponentChildren } from 'preact';

interface Props {
  /** Of what is filled in. */
  readonly id: string;
  readonly kind?: string;
  readonly label: string;
  /** What helps before anything is wrong. */
  readonly note?: string | undefined;
  /** Why it can't stay as it is. */
  readonly problem?: string | undefined;
  readonly children: ComponentChildren;
}

/** What is read out with a field. */
export const aboutOf = (
  id: string,
  note: string | undefined,
  problem: string | undefined,
): string | undefined =>
  [note && `${id}-note`, problem && `${id}-problem`].filter(Boolean).join(' ') || undefined;

/** What stands beside a field: its label and what helps above, what is wrong with it below. */
export const Entry = ({ id, kind, label, note, problem, children }: Props) => (
  <div class={kind ? `entry ${kind}` : 'entry'}>
    <label for={id}>{label}</label>
    {note && (
      <p class="note" id={`${id}-note`}>
        {note}
      </p>
    )}
    <div class="entered">{children}</div>
    {problem && (
      <p class="amiss" id={`${id}-problem`}>
        {problem}
      </p>
    )}
  </div>
);
