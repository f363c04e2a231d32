import { useState } from 'preact/hooks';
import { call, save } from '../../api.ts';
import { useAct } from '../../parts/act.ts';
import { Copy } from '../../parts/copy.tsx';
import { Field, Form } from '../../parts/field.tsx';
import { Failure } from '../enter/sheet.tsx';
import type { PartProps } from './class.tsx';
import { fileName } from './file-name.ts';

/** Slips to print: the code and its address, to cut apart. */
function Print({ detail }: Pick<PartProps, 'detail'>) {
  const [typed, setTyped] = useState(String(Math.max(detail.learners, 12)));
  const act = useAct();
  const [said, setSaid] = useState('');
  const count = Number(typed);
  const bad = !Number.isInteger(count) || count < 1 || count > 400;
  const print = (): void => {
    setSaid('');
    if (bad) return;
    act.run(async () => {
      await save('slips', fileName(detail.title, 'slips.pdf'), {
        params: { class: detail.id },
        query: { count },
      });
      setSaid('The slips are among your downloads.');
    });
  };
  return (
    <section>
      <h2>Slips to hand out</h2>
      <p>Each has the code, the address and how to join; print and cut them apart.</p>
      <Form onSend={print}>
        <Field
          label="How many"
          autocomplete="off"
          value={typed}
          problem={bad ? 'From 1 to 400.' : undefined}
          onValue={setTyped}
        />
        <p>
          <button type="submit" class="button main" disabled={act.busy}>
            {act.busy ? 'Making them…' : 'Make the slips (PDF)'}
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
  if (endedAt !== null) return <p>The class has ended: its code lets nobody in any more.</p>;
  return (
    <>
      <section>
        <h2>Joining code</h2>
        <p class="big-code">{joiningCode}</p>
        <p class="link-row">
          <code>
            {way}
            <wbr />
            <span class="in-one">{joiningCode}</span>
          </code>
          <Copy text={address} what="the address" />
        </p>
        <fieldset class="switch" disabled={act.busy}>
          <legend>Whoever has the code</legend>
          <label class="choice">
            <input type="radio" name="joining" checked={joiningOpen} onChange={() => change(true)} />
            may join
          </label>
          <label class="choice">
            <input type="radio" name="joining" checked={!joiningOpen} onChange={() => change(false)} />
            may not join now
          </label>
        </fieldset>
        {sure ? (
          <div class="sure">
            <p>The code above stops working, and so do all slips with it. Those who have joined stay.</p>
            <p class="row">
              <button type="button" class="button main" disabled={act.busy} onClick={renew}>
                Make a new code
              </button>
              <button type="button" class="button plain" onClick={() => setSure(false)}>
                Leave it
              </button>
            </p>
          </div>
        ) : (
          <p>
            <button type="button" class="button" onClick={() => setSure(true)}>
              New code…
            </button>
          </p>
        )}
        <Failure words={act.failure} />
      </section>
      <Print detail={detail} />
    </>
  );
}
