import { useState } from 'preact/hooks';
import { call, save } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Button } from '../../forms/button.tsx';
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
          <Button kind="main" busy={act.busy} meanwhile={common.making}>
            {common.makeSlips}
          </Button>
        </p>
      </Form>
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </section>
  );
}

/** Whether whoever has the code may join. */
function Joining({ open, busy, onOpen }: { open: boolean; busy: boolean; onOpen: (open: boolean) => void }) {
  const w = words('classes').joining.code;
  return (
    <fieldset class="switch" disabled={busy}>
      <legend>{w.whoever}</legend>
      {([true, false] as const).map((wanted) => (
        <label key={String(wanted)} class="choice">
          <input type="radio" name="joining" checked={open === wanted} onChange={() => onOpen(wanted)} />
          {wanted ? w.mayJoin : w.mayNot}
        </label>
      ))}
    </fieldset>
  );
}

/** Another code in the place of this one: who has the old slips no longer gets in. */
function NewCode({ busy, onNew, onBack }: { busy: boolean; onNew: () => void; onBack: () => void }) {
  const { common, joining } = words('classes');
  return (
    <div class="sure">
      <p>{joining.code.newMeans}</p>
      <p class="row">
        <Button kind="main" busy={busy} onPress={onNew}>
          {joining.code.newSure}
        </Button>
        <Button kind="plain" onPress={onBack}>
          {common.leaveIt}
        </Button>
      </p>
    </div>
  );
}

/** The joining code: shown large enough for the wall, open or closed, printed, made anew. */
export function Slips({ detail, onDetail }: PartProps) {
  const w = words('classes').joining.code;
  const act = useAct();
  const [sure, setSure] = useState(false);
  const { joiningCode, joiningOpen, endedAt } = detail;
  const params = { class: detail.id };
  const way = `${location.origin}/#/join/`;
  const change = (open: boolean): void =>
    act.run(async () => onDetail(await call('changeClass', { params, body: { joiningOpen: open } })));
  const renew = (): void =>
    act.run(async () => {
      onDetail(await call('newCode', { params }));
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
          <Copy text={`${way}${joiningCode}`} what={w.address} />
        </p>
        <Joining open={joiningOpen} busy={act.busy} onOpen={change} />
        {sure ? (
          <NewCode busy={act.busy} onNew={renew} onBack={() => setSure(false)} />
        ) : (
          <p>
            <Button onPress={() => setSure(true)}>{w.newAsk}</Button>
          </p>
        )}
        <Failure words={act.failure} />
      </section>
      <Print detail={detail} />
    </>
  );
}
