import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { Button } from '../../forms/button.tsx';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Field } from '../../forms/field.tsx';
import { Form, useForm } from '../../forms/form.tsx';
import { asCode } from '../../forms/typed.ts';
import { me } from '../../me.ts';
import { words } from '../../words.ts';

interface Props {
  /** From the slip's address. */
  readonly code: string;
  /** How many sheets there are. */
  readonly of: number;
  readonly onFound: (found: { readonly code: string; readonly title: string }) => void;
}

/** The joining code, and which class it is of. */
export function CodeSheet({ code, of, onFound }: Props) {
  const { code: w, next } = words('enter');
  const [typed, setTyped] = useState(code);
  const read = asCode(typed);
  const { act, told, send } = useForm({ code: read === undefined ? w.noCode : undefined });
  const refused = act.code === 'code-refused' ? act.failure : undefined;
  const look = async (): Promise<void> => {
    if (read === undefined) return;
    const { title } = await call('lookAtCode', { body: { code: read } });
    onFound({ code: read, title });
  };
  return (
    <EntrySheet title={w.title} sheet={[1, of]}>
      <Form onSend={() => send(look)}>
        <Field
          label={w.code}
          name="code"
          kind="code"
          autocomplete="off"
          first
          value={typed}
          note={w.note}
          problem={refused ?? told.code}
          onValue={act.typing(setTyped)}
        />
        <Failure words={refused ? '' : act.failure} />
        <p class="row">
          <Button kind="main" busy={act.busy} meanwhile={w.looking}>
            {next}
          </Button>
          {!me.value.person && <a href="#/enter">{w.signedInBefore}</a>}
        </p>
      </Form>
    </EntrySheet>
  );
}
