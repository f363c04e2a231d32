import './bench.css';
import { useEffect, useState } from 'preact/hooks';
import type { ToldProblem } from '../../../../shared/problem.ts';
import type { Drawn, Live, Requests } from '../../engine/messages.ts';
import { Board } from '../../parts/board.tsx';
import { Drawing } from '../../parts/drawing.tsx';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { NotRun } from '../../parts/not-run.tsx';
import { view } from '../../view.ts';
import { words } from '../../words.ts';

/** Waits until the typing pauses. */
const PAUSE = 250;

function Problems({
  title,
  problems,
  onGo,
}: {
  title: string;
  problems: readonly ToldProblem[];
  onGo: (problem: ToldProblem) => void;
}) {
  if (problems.length === 0) return null;
  return (
    <section>
      <h2>{title}</h2>
      <ul class="problems">
        {problems.map((problem) => (
          <li key={JSON.stringify(problem)}>
            <button type="button" class="step" onClick={() => onGo(problem)}>
              {problem.line ? <strong>{words('bench').line(problem.line)} </strong> : null}
              {problem.message} {problem.hint}
            </button>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** For authors: the notation on the left; the drawing, the rules and what it does on the right. */
export function Bench({ ground }: ScreenProps) {
  const w = words('bench');
  const [text, setText] = useState(w.example);
  const [read, setRead] = useState<Requests['read']['give']>();
  const [drawn, setDrawn] = useState<Drawn>();
  const [live, setLive] = useState<Live>();
  const [refused, setRefused] = useState<Error>();
  const [acts, setActs] = useState<Live['acts'][number]['act'][]>([]);
  const wanted = view.value;
  useEffect(() => {
    let here = true;
    const timer = setTimeout(async () => {
      const found = await ground.engine.call('read', { text, view: wanted });
      if (!here) return;
      setRead(found);
      if (!found.circuit) return;
      // Drawn it always is; what it does may not be told.
      const [sheet, standing] = await Promise.all([
        ground.engine.call('draw', { circuit: found.circuit, scenario: null, view: wanted }),
        ground.engine
          .call('live', { circuit: found.circuit, acts, faults: [], view: wanted })
          .catch((error: Error) => error),
      ]);
      if (!here) return;
      const told = standing instanceof Error ? undefined : standing;
      setRefused(standing instanceof Error ? standing : undefined);
      setDrawn(told && acts.length > 0 ? told.drawn : sheet);
      setLive(told);
    }, PAUSE);
    return () => {
      here = false;
      clearTimeout(timer);
    };
  }, [ground, text, acts, wanted]);
  const go = ({ line, column }: ToldProblem): void => {
    const area = document.querySelector<HTMLTextAreaElement>('#notation');
    if (!area || !line) return;
    const at =
      text
        .split('\n')
        .slice(0, line - 1)
        .join('\n').length +
      (line > 1 ? 1 : 0) +
      (column ?? 1) -
      1;
    area.focus();
    area.setSelectionRange(at, at);
  };
  return (
    <div class="bench">
      <h1>{w.title}</h1>
      <div class="columns">
        <label class="source">
          <span>{w.notation}</span>
          <textarea
            id="notation"
            spellcheck={false}
            autocomplete="off"
            rows={22}
            value={text}
            onInput={({ currentTarget }) => {
              setText(currentTarget.value);
              setActs([]);
            }}
          />
        </label>
        <div class="result">
          <Board>{drawn ? <Drawing drawn={drawn} description={w.asWritten} /> : <p>…</p>}</Board>
          <div role="status">
            <Problems title={w.mistakes} problems={read?.problems ?? []} onGo={go} />
            <Problems title={w.againstRules} problems={read?.findings ?? []} onGo={go} />
            {read?.circuit && read.findings.length === 0 && <p>{w.noMistake}</p>}
          </div>
          {refused && read?.circuit && <NotRun error={refused} />}
          {live && read?.circuit && (
            <section>
              <h2>{w.whatItDoes}</h2>
              <ul class="readings">
                {live.readings.map(({ item, label, state }) => (
                  <li key={item}>
                    <strong>{item}</strong> <span>{label}</span> <em>{state}</em>
                  </li>
                ))}
              </ul>
              <div class="row">
                {live.acts.map(({ act, words }) => (
                  <button
                    key={JSON.stringify(act)}
                    type="button"
                    class="button"
                    onClick={() => setActs([...acts, act].slice(-50))}
                  >
                    {words}
                  </button>
                ))}
                <button type="button" class="button plain" onClick={() => setActs([])}>
                  {w.atRest}
                </button>
              </div>
            </section>
          )}
        </div>
      </div>
    </div>
  );
}
