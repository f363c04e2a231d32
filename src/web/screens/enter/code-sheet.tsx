import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { me } from '../../me.ts';
import { useAct } from '../../parts/act.ts';
import { Field, Form } from '../../parts/field.tsx';
import { asCode } from './names.ts';
import { Failure, Sheet } from './sheet.tsx';

interface Props {
  /** From the slip's address. */
  readonly code: string;
  /** How many sheets there are. */
  readonly of: number;
  readonly onFound: (found: { readonly code: string; readonly title: string }) => void;
}

/** The joining code, and which class it is of. */
export function CodeSheet({ code, of, onFound }: Props) {
  const [typed, setTyped] = useState(code);
  const [looked, setLooked] = useState(false);
  const act = useAct();
  const read = asCode(typed);
  const refused = act.code === 'code-refused' ? act.failure : undefined;
  const look = (): void => {
    setLooked(true);
    if (read === undefined) return;
    act.run(async () => {
      const { title } = await call('lookAtCode', { body: { code: read } });
      onFound({ code: read, title });
    });
  };
  return (
    <Sheet title="Join a class" sheet={[1, of]}>
      <Form onSend={look}>
        <Field
          label="Joining code"
          name="code"
          kind="code"
          autocomplete="off"
          first
          value={typed}
          note="Eight letters and digits, on the slip from your tutor. Capitals and hyphens don’t matter, nor whether it is O or 0."
          problem={
            refused ??
            (looked && read === undefined
              ? 'It has eight letters and digits, like 4C7K-9MTX. Look at the slip again.'
              : undefined)
          }
          onValue={(now) => {
            act.clear();
            setTyped(now);
          }}
        />
        <Failure words={refused ? '' : act.failure} />
        <p class="row">
          <button type="submit" class="button main" disabled={act.busy}>
            {act.busy ? 'Looking…' : 'Next'}
          </button>
          {!me.value.person && <a href="#/enter">I have signed in here before</a>}
        </p>
      </Form>
    </Sheet>
  );
}
