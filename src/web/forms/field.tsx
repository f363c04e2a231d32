import { useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { words } from '../words.ts';
import { aboutOf, Entry } from './entry.tsx';

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

/** Where neither capitals nor corrections help. */
const AS_TYPED = { autocapitalize: 'none', autocorrect: 'off', spellcheck: false } as const;

/** Shows what was typed of a password, or hides it. */
function ShowIt({ label, shown, onShow }: { label: string; shown: boolean; onShow: () => void }) {
  const told = words('first').parts.field;
  return (
    <button
      type="button"
      class="button plain"
      aria-label={shown ? told.hideOf(label) : told.showOf(label)}
      onClick={onShow}
    >
      {shown ? told.hide : told.show}
    </button>
  );
}

/** A field with its label above, and what is wrong with it below, where it is also read out. */
export function Field(props: FieldProps) {
  const { label, value, onValue, note, problem, autocomplete, name, kind = 'text', first, optional } = props;
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
  return (
    <Entry id={id} kind={kind} label={label} note={note} problem={problem}>
      <input
        ref={input}
        id={id}
        name={name}
        {...(kind === 'password' && !shown ? { type: 'password' } : { type: 'text' })}
        value={value}
        autocomplete={autocomplete}
        {...(kind === 'text' ? {} : AS_TYPED)}
        required={!optional}
        aria-invalid={problem ? true : undefined}
        aria-describedby={aboutOf(id, note, problem)}
        onInput={({ currentTarget }) => onValue(currentTarget.value)}
      />
      {kind === 'password' && <ShowIt label={label} shown={shown} onShow={() => setShown(!shown)} />}
    </Entry>
  );
}
