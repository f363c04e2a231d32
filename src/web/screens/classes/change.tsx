import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { Button } from '../../forms/button.tsx';
import { Confirm } from '../../forms/confirm.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Form, useForm } from '../../forms/form.tsx';
import { me, roleOf } from '../../me.ts';
import { set, words } from '../../words.ts';
import type { PartProps } from './part-props.ts';
import { bodyOf, problemsOf, TitleFields } from './title-fields.tsx';

function Ending({ detail, onDetail }: PartProps) {
  const { goOn, end } = words('classes').one;
  const ended = detail.endedAt !== null;
  const w = ended ? goOn : end;
  const change = async (): Promise<void> =>
    onDetail(await call('changeClass', { params: { class: detail.id }, body: { ended: !ended } }));
  return (
    <Confirm title={w.title} ask={w.ask} sure={w.sure} done={change}>
      <p>{w.means}</p>
    </Confirm>
  );
}

/** What a class is called, and its end. */
export function Change({ detail, onDetail }: PartProps) {
  const { one: w, common } = words('classes');
  const [value, setValue] = useState({ title: detail.title, intake: detail.intake ?? '' });
  const [said, setSaid] = useState('');
  const { act, told, send } = useForm(problemsOf(value));
  const keep = async (): Promise<void> => {
    onDetail(await call('changeClass', { params: { class: detail.id }, body: bodyOf(value) }));
    setSaid(w.change.kept);
  };
  const erase = async (): Promise<void> => {
    await call('eraseClass', { params: { class: detail.id }, query: { confirm: detail.id } });
    location.hash = '#/classes';
  };
  return (
    <>
      <section>
        <h2>{w.change.nameAndIntake}</h2>
        <Form
          onSend={() => {
            setSaid('');
            send(keep);
          }}
        >
          <TitleFields value={value} told={told} onValue={setValue} />
          <p class="row">
            <Button kind="main" busy={act.busy} meanwhile={common.oneMoment}>
              {w.change.keep}
            </Button>
            <span role="status">{said}</span>
          </p>
          <Failure words={act.failure} />
        </Form>
      </section>
      <Ending key={String(detail.endedAt)} detail={detail} onDetail={onDetail} />
      {roleOf(me.value) === 'admin' && (
        <Confirm title={w.erase.title} ask={w.erase.ask} sure={w.erase.sure} stop done={erase}>
          <p>{set(w.erase.means, { strong: (text) => <strong>{text}</strong> })}</p>
        </Confirm>
      )}
    </>
  );
}
