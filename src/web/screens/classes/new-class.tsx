import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Form } from '../../forms/form.tsx';
import { words } from '../../words.ts';
import { classAddress } from './at.ts';
import { bodyOf, problemsOf, TitleFields } from './title-fields.tsx';

/** A new class, whose tutor is who makes it. */
export function NewClass() {
  const { list: w, common } = words('classes');
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
    <EntrySheet title={w.newClass}>
      <Form onSend={make}>
        <TitleFields value={value} looked={looked} first onValue={setValue} />
        <Failure words={act.failure} />
        <p class="row">
          <button type="submit" class="button main" disabled={act.busy}>
            {act.busy ? common.oneMoment : w.make}
          </button>
          <a href="#/classes">{w.back}</a>
        </p>
      </Form>
    </EntrySheet>
  );
}
