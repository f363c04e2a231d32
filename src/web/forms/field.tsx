import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';

import { words } from '../words.ts';

export interface FieldProps {
  readonly label: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  /** What helps before anything is wrong. */
  readonly note?: string | undefined;
  /** Why it can't stay as it is. */
  readonly problem?: string | undefined;
  /** What the browser may fill in: a token of the HTML standard's autofill. */
  readonly autocomplete: 'name' | 'username' | 'current-password' | 'new-password' | 'off';
  readonly name?: string;
  /** `exact`: a name or code, where neither capitals nor corrections help. */
  readonly kind?: 'text' | 'exact' | 'code' | 'password';
  /** Gets the focus when it appears. */
  readonly first?: boolean;
  readonly optional?: boolean;
}

/** A field with its label above, and what is wrong with it below, where it is also read out. */
export function Field({
  label,
  value,
  onValue,
  note,
  problem,
  autocomplete,
  name,
  kind = 'text',
  first,
  optional,
}: FieldProps) {
  const id = useId();
  const input = useRef<HTMLInputElement>(null);
  const [shown, setShown] = useState(false);
  // Before anything can be typed: what is typed must not change over to another field half-way.
  useLayoutEffect(() => {
    if (first) input.current?.focus();
  }, [first]);
  useLayoutEffect(() => {
    if (problem) input.current?.focus();
  }, [problem]);
  const exact = kind !== 'text';
  const told = words('first').parts.field;
  return (
    <div class={`entry ${kind}`}>
      <label for={id}>{label}</label>
      {note && (
        <p class="note" id={`${id}-note`}>
          {note}
        </p>
      )}
      <div class="entered">
        <input
          ref={input}
          id={id}
          name={name}
          {...(kind === 'password' && !shown ? { type: 'password' } : { type: 'text' })}
          value={value}
          autocomplete={autocomplete}
          autocapitalize={exact ? 'none' : undefined}
          autocorrect={exact ? 'off' : undefined}
          spellcheck={exact ? false : undefined}
          required={!optional}
          aria-invalid={problem ? true : undefined}
          aria-describedby={
            [note && `${id}-note`, problem && `${id}-problem`].filter(Boolean).join(' ') || undefined
          }
          onInput={({ currentTarget }) => onValue(currentTarget.value)}
        />
        {kind === 'password' && (
          <button
            type="button"
            class="button plain"
            aria-label={shown ? told.hideOf(label) : told.showOf(label)}
            onClick={() => setShown(!shown)}
          >
            {shown ? told.hide : told.show}
          </button>
        )}
      </div>
      {problem && (
        <p class="amiss" id={`${id}-problem`}>
          {problem}
        </p>
      )}
    </div>
  );
}
