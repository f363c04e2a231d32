import { useState } from 'preact/hooks';
import { call } from '../../api.ts';
import { me, roleOf } from '../../me.ts';
import { useAct } from '../../parts/act.ts';
import { Form } from '../../parts/field.tsx';
import { Failure } from '../enter/sheet.tsx';
import type { PartProps } from './class.tsx';
import { Sure } from './sure.tsx';
import { bodyOf, problemsOf, TitleFields } from './title-fields.tsx';

function Ending({ detail, onDetail }: PartProps) {
  const ended = detail.endedAt !== null;
  const change = async (): Promise<void> =>
    onDetail(await call('changeClass', { params: { class: detail.id }, body: { ended: !ended } }));
  return ended ? (
    <Sure title="Go on with the class" ask="Go on with the class…" sure="Go on with it" done={change}>
      <p>It is as it was when it ended, and may be joined again if its code is open.</p>
    </Sure>
  ) : (
    <Sure title="End the class" ask="End the class…" sure="End it" done={change}>
      <p>
        Nobody joins it any more, and it leaves the list of classes that go on. Its learners, their practice
        and its homework stay as they are; it can be taken up again.
      </p>
    </Sure>
  );
}

/** What a class is called, and its end. */
export function Change({ detail, onDetail }: PartProps) {
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
      setSaid('Kept.');
    });
  };
  const erase = async (): Promise<void> => {
    await call('eraseClass', { params: { class: detail.id }, query: { confirm: detail.id } });
    location.hash = '#/classes';
  };
  return (
    <>
      <section>
        <h2>Name and intake</h2>
        <Form onSend={keep}>
          <TitleFields value={value} looked={looked} onValue={setValue} />
          <p class="row">
            <button type="submit" class="button main" disabled={act.busy}>
              {act.busy ? 'One moment…' : 'Keep'}
            </button>
            <span role="status">{said}</span>
          </p>
          <Failure words={act.failure} />
        </Form>
      </section>
      <Ending key={String(detail.endedAt)} detail={detail} onDetail={onDetail} />
      {roleOf(me.value) === 'admin' && (
        <Sure title="Erase the class" ask="Erase the class…" sure="Erase it for good" stop done={erase}>
          <p>
            <strong>This can’t be undone.</strong> Gone are the class, all its homework sets, papers and
            marks. Its people stay, and what they have practised.
          </p>
        </Sure>
      )}
    </>
  );
}
