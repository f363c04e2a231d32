import { useState } from 'preact/hooks';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Field } from '../../forms/field.tsx';
import { Form } from '../../forms/form.tsx';
import { problemOfName } from '../../forms/typed.ts';
import { words } from '../../words.ts';

interface Props {
  readonly sheet: readonly [number, number];
  readonly note: string;
  readonly value: string;
  readonly onValue: (value: string) => void;
  readonly onNext: () => void;
  readonly onBack: () => void;
}

/** What somebody is called. */
export function NameSheet({ sheet, note, value, onValue, onNext, onBack }: Props) {
  const w = words('enter');
  const [looked, setLooked] = useState(false);
  const problem = problemOfName(value);
  return (
    <EntrySheet title={w.name.title} sheet={sheet}>
      <Form
        onSend={() => {
          setLooked(true);
          if (!problem) onNext();
        }}
      >
        <Field
          label={w.name.name}
          name="name"
          autocomplete="name"
          first
          value={value}
          note={note}
          problem={looked ? problem : undefined}
          onValue={onValue}
        />
        <p class="row">
          <button type="submit" class="button main">
            {w.next}
          </button>
          <button type="button" class="button plain" onClick={onBack}>
            {w.back}
          </button>
        </p>
      </Form>
    </EntrySheet>
  );
}
