import { Button } from '../../forms/button.tsx';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Field } from '../../forms/field.tsx';
import { Form, useForm } from '../../forms/form.tsx';
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
  const { told, send } = useForm({ name: problemOfName(value) });
  return (
    <EntrySheet title={w.name.title} sheet={sheet}>
      <Form onSend={() => send(async () => onNext())}>
        <Field
          label={w.name.name}
          name="name"
          autocomplete="name"
          first
          value={value}
          note={note}
          problem={told.name}
          onValue={onValue}
        />
        <p class="row">
          <Button kind="main">{w.next}</Button>
          <Button kind="plain" onPress={onBack}>
            {w.back}
          </Button>
        </p>
      </Form>
    </EntrySheet>
  );
}
