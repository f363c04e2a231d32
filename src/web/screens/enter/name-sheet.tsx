import { useState } from 'preact/hooks';
import { Field, Form } from '../../parts/field.tsx';
import { problemOfName } from './names.ts';
import { Sheet } from './sheet.tsx';

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
  const [looked, setLooked] = useState(false);
  const problem = problemOfName(value);
  return (
    <Sheet title="What are you called?" sheet={sheet}>
      <Form
        onSend={() => {
          setLooked(true);
          if (!problem) onNext();
        }}
      >
        <Field
          label="Your name"
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
            Next
          </button>
          <button type="button" class="button plain" onClick={onBack}>
            Back
          </button>
        </p>
      </Form>
    </Sheet>
  );
}
