import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Confirm } from '../../forms/confirm.tsx';
import { Failure } from '../../forms/failure.tsx';
import { Form } from '../../forms/form.tsx';
import { me, roleOf } from '../../me.ts';
import { set, words } from '../../words.ts';
import type { PartProps } from './part-props.ts';
import { bodyOf, problemsOf, TitleFields } from './title-fields.tsx';

function Ending({ detail, onDetail }: PartProps) {
  const { goOn, end } = words('classes').one;
  const ended = detail.endedAt !== null;
  const change = async (): Promise<void> =>
    onDetail(await call('changeClass', { params: { class: detail.id }, body: { ended: !ended } }));
  return ended ? (
    <Confirm title={goOn.title} ask={goOn.ask} sure={goOn.sure} done={change}>
      <p>{goOn.means}</p>
    </Confirm>
  ) : (
    <Confirm title={end.title} ask={end.ask} sure={end.sure} done={change}>
      <p>{end.means}</p>
    </Confirm>
  );
}

/** What a class is called, and its end. */
export function Change({ detail, onDetail }: PartProps) {
  const { one: w, common } = words('classes');
  const [value, setValue] = useState({ title: detail.title, intake: detail.intake ?? '' });
  const [looked, setLooked] = useState(false);
  const [said, setSaid] = useState('');
  const act = useAct();
  const keep = (): void => {
    setLooked(true);
    setSaid('');
    if (Object.keys(problemsOf(value)).length > 0) return;
    act.run(async () => {
      onDetail(await call('changeClass', { params: { class: detail.id }, body: bodyOf(value) }));
      setSaid(w.change.kept);
    });
  };
  const erase = async (): Promise<void> => {
    await call('eraseClass', { params: { class: detail.id }, query: { confirm: detail.id } });
    location.hash = '#/classes';
  };
  return (
    <>
      <section>
        <h2>{w.change.nameAndIntake}</h2>
        <Form onSend={keep}>
          <TitleFields value={value} looked={looked} onValue={setValue} />
          <p class="row">
            <button type="submit" class="button main" disabled={act.busy}>
              {act.busy ? common.oneMoment : w.change.keep}
            </button>
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
