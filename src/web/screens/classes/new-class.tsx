import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { useAct } from '../../parts/act.ts';
import { Form } from '../../parts/field.tsx';
import { Failure, Sheet } from '../enter/sheet.tsx';
import { classAddress } from './at.ts';
import { bodyOf, problemsOf, TitleFields } from './title-fields.tsx';

/** A new class, whose tutor is who makes it. */
export function NewClass() {
  const [value, setValue] = useState({ title: '', intake: '' });
  const [looked, setLooked] = useState(false);
  const act = useAct();
  const make = (): void => {
    setLooked(true);
    if (Object.keys(problemsOf(value)).length > 0) return;
    act.run(async () => {
      const { id } = await call('newClass', { body: bodyOf(value) });
      location.hash = classAddress(id, 'slips');
    });
  };
  return (
    <Sheet title="New class">
      <Form onSend={make}>
        <TitleFields value={value} looked={looked} first onValue={setValue} />
        <Failure words={act.failure} />
        <p class="row">
          <button type="submit" class="button main" disabled={act.busy}>
            {act.busy ? 'One moment…' : 'Make the class'}
          </button>
          <a href="#/classes">Back</a>
        </p>
      </Form>
    </Sheet>
  );
}
