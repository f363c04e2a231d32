import type { Ref } from 'preact';
import { useRef, useState } from 'preact/hooks';
import type { PaperRow, SetView } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { Refused } from '../../../forms/failure.tsx';
import { Form } from '../../../forms/form.tsx';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { set, words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import { Head } from '../parts/head.tsx';
import { marksTyped } from './marks-typed.ts';
import { paperTyped } from './paper-typed.ts';

/** A cell for each item's marks; the way on is the same key throughout, and the last one keeps the paper. */
function Cells({
  places,
  marks,
  at: row,
  onMarks,
  onCell,
}: {
  places: readonly { readonly marks: number }[];
  marks: readonly string[];
  at: Ref<HTMLDivElement>;
  onMarks: (marks: readonly string[]) => void;
  onCell: (at: number) => void;
}) {
  const { typed: w } = words('sets');
  return (
    <div class="cells" ref={row}>
      {places.map(({ marks: outOf }, at) => (
        <label key={`${at} ${outOf}`}>
          <span>
            {set(w.cell({ number: at + 1, outOf }), { of: (text) => <span class="of">{text}</span> })}
          </span>
          <input
            type="text"
            inputMode="decimal"
            autocomplete="off"
            aria-label={w.marksFor({ number: at + 1, outOf })}
            value={marks[at] ?? ''}
            onInput={({ currentTarget: { value } }) =>
              onMarks(marks.map((each, place) => (place === at ? value : each)))
            }
            onKeyDown={(event) => {
              if ((event.key === 'Enter' && at < places.length - 1) || event.key === ' ') {
                event.preventDefault();
                onCell(Math.min(at + 1, places.length - 1));
              }
            }}
          />
        </label>
      ))}
    </div>
  );
}

/** The code on the paper; Enter leads to its marks. */
function CodeField({
  code,
  at,
  onCode,
  onEnter,
}: {
  code: string;
  at: Ref<HTMLInputElement>;
  onCode: (code: string) => void;
  onEnter: () => void;
}) {
  return (
    <label class="field">
      {words('sets').typed.code}
      <input
        ref={at}
        type="text"
        autocomplete="off"
        autocapitalize="characters"
        spellcheck={false}
        required
        value={code}
        onInput={({ currentTarget }) => onCode(currentTarget.value)}
        onKeyDown={(event) => {
          if (event.key !== 'Enter') return;
          event.preventDefault();
          onEnter();
        }}
      />
    </label>
  );
}

/** One paper after another: its code, its marks, and what has been kept so far. */
function Typing({ view, papers }: { view: SetView; papers: readonly PaperRow[] }) {
  const { typed: w, common } = words('sets');
  const { id, places } = view.set;
  const blank = places.map(() => '');
  const [code, setCode] = useState('');
  const [marks, setMarks] = useState<readonly string[]>(blank);
  const [kept, setKept] = useState<readonly string[]>([]);
  const [told, setTold] = useState('');
  const { busy, failure, run } = useAct();
  const codeField = useRef<HTMLInputElement>(null);
  const cells = useRef<HTMLDivElement>(null);
  const { row: found, amiss } = paperTyped(code, papers);
  const cell = (at: number): void => {
    const next = cells.current?.querySelectorAll('input')[at];
    next?.focus();
    next?.select();
  };
  const keep = async (): Promise<void> => {
    const typed = marksTyped(marks, places);
    setTold('problem' in typed ? typed.problem : '');
    if ('problem' in typed) {
      cell(typed.at);
      return;
    }
    const body = { code, marks: [...typed.marks] };
    const { name, total } = await call('typeMarks', { params: { set: id }, body });
    setKept([w.kept({ code, name, earned: total.earned, outOf: total.outOf }), ...kept]);
    setCode('');
    setMarks(blank);
    codeField.current?.focus();
  };
  return (
    <>
      <Form class="typed" byBrowser onSend={() => run(keep)}>
        <CodeField code={code} at={codeField} onCode={setCode} onEnter={() => cell(0)} />
        <p class="whose" role="status">
          {found
            ? w.whose({ name: found.name, attempt: found.attempt, hasMarks: found.total !== null })
            : amiss}
        </p>
        <Cells places={places} marks={marks} at={cells} onMarks={setMarks} onCell={cell} />
        <Refused words={told || failure} />
        <Button kind="main" busy={busy} meanwhile={common.keeping} disabled={code.trim() === ''}>
          {w.keep}
        </Button>
      </Form>
      <ol class="kept" reversed aria-label={w.keptNow} aria-live="polite">
        {kept.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ol>
    </>
  );
}

/** Marks of papers that were written on paper, by their codes: many of them, by keyboard. */
export function TypedMarks({ set: id }: { set: string }) {
  const { typed: w, common } = words('sets');
  const { fetched, again } = useFetched(id, async () => {
    const [view, { papers }] = await Promise.all([
      call('homework', { params: { set: id } }),
      call('homeworkPapers', { params: { set: id } }),
    ]);
    return { view, papers };
  });
  return (
    <div class="homework wide">
      <Show of={fetched} again={again}>
        {({ view, papers }) => (
          <>
            <Head title={w.title} cells={[view.set.title]} />
            <p>{w.how}</p>
            <Typing view={view} papers={papers} />
            <p>
              <a href={addressOf({ at: 'set', set: id })}>{common.backToSet}</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
