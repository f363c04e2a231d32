import { useState } from 'preact/hooks';
import type { SetView } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Refused } from '../../../forms/failure.tsx';
import { Form } from '../../../forms/form.tsx';
import { words } from '../../../words.ts';
import { fieldText, momentOf } from '../moments.ts';

/** Gives everybody longer, as long as the set has not closed. Earlier is not to be had: learners were told the time. */
export function CloseLater({ view, onMoved }: { view: SetView; onMoved: (view: SetView) => void }) {
  const w = words('sets').one.closeLater;
  const { id, closesAt } = view.set;
  const [text, setText] = useState(fieldText(closesAt));
  const { busy, failure, run } = useAct();
  const wanted = momentOf(text);
  const move = async (): Promise<void> => {
    if (wanted === undefined) return;
    onMoved(await call('closeLater', { params: { set: id }, body: { closesAt: wanted } }));
  };
  return (
    <details class="in-words">
      <summary>{w.title}</summary>
      <Form class="row" byBrowser onSend={() => run(move)}>
        <label class="field">
          {w.closes(closesAt)}
          <input
            type="datetime-local"
            required
            value={text}
            min={fieldText(closesAt)}
            onInput={(event) => setText(event.currentTarget.value)}
          />
        </label>
        <Button busy={busy} meanwhile={w.busy} disabled={wanted === undefined || wanted <= closesAt}>
          {w.close}
        </Button>
      </Form>
      <Refused words={failure} />
    </details>
  );
}
