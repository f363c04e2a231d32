import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { Button } from '../../forms/button.tsx';
import { EntrySheet } from '../../forms/entry-sheet.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Form, useForm } from '../../forms/form.tsx';
import { words } from '../../words.ts';
import { classAddress } from './classes-route.ts';
import { bodyOf, problemsOf, TitleFields } from './title-fields.tsx';

/** A new class, whose tutor is who makes it. */
export function NewClass() {
  const { list: w, common } = words('classes');
  const [value, setValue] = useState({ title: '', intake: '' });
  const { act, told, send } = useForm(problemsOf(value));
  const make = async (): Promise<void> => {
    const { id } = await call('newClass', { body: bodyOf(value) });
    location.hash = classAddress(id, 'slips');
  };
  return (
    <EntrySheet title={w.newClass}>
      <Form onSend={() => send(make)}>
        <TitleFields value={value} told={told} first onValue={setValue} />
        <Failure words={act.failure} />
        <p class="row">
          <Button kind="main" busy={act.busy} meanwhile={common.oneMoment}>
            {w.make}
          </Button>
          <a href="#/classes">{w.back}</a>
        </p>
      </Form>
    </EntrySheet>
  );
}
