import { useState } from 'preact/hooks';
import { call, save } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Failure } from '../../forms/failure.tsx';
import { Field } from '../../forms/field.tsx';
import { Form } from '../../forms/form.tsx';
import { Copy } from '../../parts/copy.tsx';
import { words } from '../../words.ts';
import { fileName } from './file-name.ts';
import type { PartProps } from './part-props.ts';

/** Slips to print: the code and its address, to cut apart. */
function Print({ detail }: Pick<PartProps, 'detail'>) {
  const { common, files, joining } = words('classes');
  const w = joining.slips;
  const [typed, setTyped] = useState(String(Math.max(detail.learners, 12)));
  const act = useAct();
  const [said, setSaid] = useState('');
  const count = Number(typed);
  const bad = !Number.isInteger(count) || count < 1 || count > 400;
  const print = (): void => {
    setSaid('');
    if (bad) return;
    act.run(async () => {
      await save('slips', fileName(detail.title, files.slips), {
        params: { class: detail.id },
        query: { count },
      });
      setSaid(common.slipsKept);
    });
  };
  return (
    <section>
      <h2>{w.title}</h2>
      <p>{w.means}</p>
      <Form onSend={print}>
        <Field
          label={w.howMany}
          autocomplete="off"
          value={typed}
          problem={bad ? w.range : undefined}
          onValue={setTyped}
        />
        <p>
          <button type="submit" class="button main" disabled={act.busy}>
            {act.busy ? common.making : common.makeSlips}
          </button>
        </p>
      </Form>
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </section>
  );
}

/** The joining code: shown large enough for the wall, open or closed, printed, made anew. */
export function Slips({ detail, onDetail }: PartProps) {
  const { common, joining } = words('classes');
  const w = joining.code;
  const act = useAct();
  const [sure, setSure] = useState(false);
  const { id, joiningCode, joiningOpen, endedAt } = detail;
  const way = `${location.origin}/#/join/`;
  const address = `${way}${joiningCode}`;
  const change = (open: boolean): void =>
    act.run(async () =>
      onDetail(await call('changeClass', { params: { class: id }, body: { joiningOpen: open } })),
    );
  const renew = (): void =>
    act.run(async () => {
      onDetail(await call('newCode', { params: { class: id } }));
      setSure(false);
    });
  if (endedAt !== null) return <p>{w.ended}</p>;
  return (
    <>
      <section>
        <h2>{w.title}</h2>
        <p class="big-code">{joiningCode}</p>
        <p class="link-row">
          <code>
            {way}
            <wbr />
            <span class="in-one">{joiningCode}</span>
          </code>
          <Copy text={address} what={w.address} />
        </p>
        <fieldset class="switch" disabled={act.busy}>
          <legend>{w.whoever}</legend>
          <label class="choice">
            <input type="radio" name="joining" checked={joiningOpen} onChange={() => change(true)} />
            {w.mayJoin}
          </label>
          <label class="choice">
            <input type="radio" name="joining" checked={!joiningOpen} onChange={() => change(false)} />
            {w.mayNot}
          </label>
        </fieldset>
        {sure ? (
          <div class="sure">
            <p>{w.newMeans}</p>
            <p class="row">
              <button type="button" class="button main" disabled={act.busy} onClick={renew}>
                {w.newSure}
              </button>
              <button type="button" class="button plain" onClick={() => setSure(false)}>
                {common.leaveIt}
              </button>
            </p>
          </div>
        ) : (
          <p>
            <button type="button" class="button" onClick={() => setSure(true)}>
              {w.newAsk}
            </button>
          </p>
        )}
        <Failure words={act.failure} />
      </section>
      <Print detail={detail} />
    </>
  );
}
