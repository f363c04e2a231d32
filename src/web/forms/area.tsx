import { useId } from 'preact/hooks';
import { aboutOf, Entry } from './entry.tsx';

interface Props {
  readonly label: string;
  readonly note: string;
  readonly problem: string | undefined;
  readonly value: string;
  readonly rows: number;
  readonly onValue: (value: string) => void;
}

/** A field of several lines. */
export function Area({ label, note, problem, value, rows, onValue }: Props) {
  const id = useId();
  return (
    <Entry id={id} label={label} note={note} problem={problem}>
      <textarea
        id={id}
        rows={rows}
        autocomplete="off"
        spellcheck={false}
        value={value}
        aria-invalid={problem ? true : undefined}
        aria-describedby={aboutOf(id, note, problem)}
        onInput={({ currentTarget }) => onValue(currentTarget.value)}
      />
    </Entry>
  );
}
