import { useRef, useState } from 'preact/hooks';
import type { PaperRow, SetView } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Refused } from '../../../forms/failure.tsx';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { set, words } from '../../../words.ts';
import { Head } from '../parts/head.tsx';
import { addressOf } from '../where.ts';
import { marksTyped } from './marks-typed.ts';
import { paperTyped } from './paper-typed.ts';

function Entry({ view, papers }: { view: SetView; papers: readonly PaperRow[] }) {
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
    const { name, total } = await call('typeMarks', {
      params: { set: id },
      body: { code, marks: [...typed.marks] },
    });
    setKept([w.kept({ code, name, earned: total.earned, outOf: total.outOf }), ...kept]);
    setCode('');
    setMarks(blank);
    codeField.current?.focus();
  };
  return (
    <>
      <form
        class="typed"
        onSubmit={(event) => {
          event.preventDefault();
          run(keep);
        }}
      >
        <label class="field">
          {w.code}
          <input
            ref={codeField}
            type="text"
            autocomplete="off"
            autocapitalize="characters"
            spellcheck={false}
            required
            value={code}
            onInput={({ currentTarget }) => setCode(currentTarget.value)}
            onKeyDown={(event) => {
              if (event.key !== 'Enter') return;
              event.preventDefault();
              cell(0);
            }}
          />
        </label>
        <p class="whose" role="status">
          {found
            ? w.whose({ name: found.name, attempt: found.attempt, hasMarks: found.total !== null })
            : amiss}
        </p>
        <div class="cells" ref={cells}>
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
                  setMarks(marks.map((each, place) => (place === at ? value : each)))
                }
                onKeyDown={(event) => {
                  // The way on is the same key throughout; the last one keeps the paper.
                  if ((event.key === 'Enter' && at < places.length - 1) || event.key === ' ') {
                    event.preventDefault();
                    cell(Math.min(at + 1, places.length - 1));
                  }
                }}
              />
            </label>
          ))}
        </div>
        <Refused words={told || failure} />
        <button type="submit" class="button main" disabled={busy || code.trim() === ''}>
          {busy ? common.keeping : w.keep}
        </button>
      </form>
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
            <Entry view={view} papers={papers} />
            <p>
              <a href={addressOf({ at: 'set', set: id })}>{common.backToSet}</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
