import { useRef, useState } from 'preact/hooks';
import type { PaperRow, SetView } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { useAct } from '../../../parts/act.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { Head } from '../parts/head.tsx';
import { shownMarks } from '../parts/item-verdict.tsx';
import { addressOf } from '../where.ts';
import { marksTyped } from './marks-typed.ts';
import { paperTyped } from './paper-typed.ts';

interface Kept {
  readonly code: string;
  readonly text: string;
}

function Entry({ view, papers }: { view: SetView; papers: readonly PaperRow[] }) {
  const { id, places } = view.set;
  const blank = places.map(() => '');
  const [code, setCode] = useState('');
  const [marks, setMarks] = useState<readonly string[]>(blank);
  const [kept, setKept] = useState<readonly Kept[]>([]);
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
    setKept([{ code, text: `${name}: ${shownMarks(total.earned)} of ${total.outOf} marks` }, ...kept]);
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
          Code on the paper
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
            ? `${found.name}${found.attempt > 1 ? `, attempt ${found.attempt}` : ''}${found.total ? ' (has marks already; these replace them)' : ''}`
            : amiss}
        </p>
        <div class="cells" ref={cells}>
          {places.map(({ marks: outOf }, at) => (
            <label key={`${at} ${outOf}`}>
              <span>
                {at + 1} <span class="of">of {outOf}</span>
              </span>
              <input
                type="text"
                inputMode="decimal"
                autocomplete="off"
                aria-label={`Marks for item ${at + 1}, of ${outOf}; empty where it was left out`}
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
        {(told || failure) && (
          <p class="refused" role="alert">
            {told || failure}
          </p>
        )}
        <button type="submit" class="button main" disabled={busy || code.trim() === ''}>
          {busy ? 'Keeping…' : 'Keep, and the next paper'}
        </button>
      </form>
      <ol class="kept" reversed aria-label="Kept just now" aria-live="polite">
        {kept.map(({ code: of, text }) => (
          <li key={`${of} ${text}`}>
            {of}, {text}
          </li>
        ))}
      </ol>
    </>
  );
}

/** Marks of papers that were written on paper, by their codes: many of them, by keyboard. */
export function TypedMarks({ set }: { set: string }) {
  const { fetched, again } = useFetched(set, async () => {
    const [view, { papers }] = await Promise.all([
      call('homework', { params: { set } }),
      call('homeworkPapers', { params: { set } }),
    ]);
    return { view, papers };
  });
  return (
    <div class="homework wide">
      <Show of={fetched} again={again}>
        {({ view, papers }) => (
          <>
            <Head title="Marks from paper" cells={[view.set.title]} />
            <p>
              Type the code, then the marks item by item: Enter or the space bar goes on, an empty place was
              left out, Enter at the last one keeps the paper and begins the next.
            </p>
            <Entry view={view} papers={papers} />
            <p>
              <a href={addressOf({ at: 'set', set })}>Back to the set</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
