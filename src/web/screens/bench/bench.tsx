import './bench.css';
import { useEffect, useState } from 'preact/hooks';
import type { Circuit } from '../../../../shared/circuit.ts';
import type { ToldProblem } from '../../../../shared/problem.ts';
import type { Act } from '../../../../shared/scenario.ts';
import type { Drawn, Live, Requests, View } from '../../engine/messages.ts';
import { Button } from '../../forms/button.tsx';
import { Acts } from '../../parts/acts.tsx';
import { Board } from '../../parts/board.tsx';
import { Drawing } from '../../parts/drawing.tsx';
import type { ScreenProps } from '../../parts/loaded.tsx';
import { NotRun } from '../../parts/not-run.tsx';
import { Readings } from '../../parts/readings.tsx';
import type { Ground } from '../../start.ts';
import { view } from '../../view.ts';
import { words } from '../../words.ts';

/** Waits until the typing pauses. */
const PAUSE = 250;
/** So many acts one after another are worked out anew each time. */
const MOST_ACTS = 50;

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

/** What was written, as far as it could be read. */
interface Written {
  readonly read: Requests['read']['give'];
  readonly drawn?: Drawn;
  readonly live?: Live;
  /** Why it isn't run. */
  readonly refused?: Error;
}

/** Drawn it always is; what it does may not be told. */
async function worked(
  { engine }: Ground,
  circuit: Circuit,
  acts: readonly Act[],
  view: View,
): Promise<Omit<Written, 'read'>> {
  const [drawn, live] = await Promise.all([
    engine.call('draw', { circuit, scenario: null, view }),
    engine.call('live', { circuit, acts, faults: [], view }).catch((error: Error) => error),
  ]);
  if (live instanceof Error) return { drawn, refused: live };
  return { drawn: acts.length > 0 ? live.drawn : drawn, live };
}

/** What is written, looked at whenever the typing pauses. What was drawn stays until there is something else to draw. */
function useWritten(ground: Ground, text: string, acts: readonly Act[]): Partial<Written> {
  const [written, setWritten] = useState<Partial<Written>>({});
  const wanted = view.value;
  useEffect(() => {
    let here = true;
    const timer = setTimeout(async () => {
      const read = await ground.engine.call('read', { text, view: wanted });
      if (!here) return;
      setWritten((before) => ({ ...before, read }));
      if (!read.circuit) return;
      const found = await worked(ground, read.circuit, acts, wanted);
      if (here) setWritten({ read, ...found });
    }, PAUSE);
    return () => {
      here = false;
      clearTimeout(timer);
    };
  }, [ground, text, acts, wanted]);
  return written;
}

/** How many letters stand before a place. */
const offsetOf = (text: string, line: number, column: number): number =>
  text
    .split('\n')
    .slice(0, line - 1)
    .reduce((sum, { length }) => sum + length + 1, column - 1);

/** Puts the cursor where something is wrong. */
function goTo(text: string, { line, column }: ToldProblem): void {
  const area = document.querySelector<HTMLTextAreaElement>('#notation');
  if (!area || !line) return;
  const at = offsetOf(text, line, column ?? 1);
  area.focus();
  area.setSelectionRange(at, at);
}

function WhatItDoes({ live, onActs }: { live: Live; onActs: (more: readonly Act[]) => void }) {
  const w = words('bench');
  return (
    <section>
      <h2>{w.whatItDoes}</h2>
      <Readings readings={live.readings} />
      <div class="row">
        <Acts acts={live.acts} onAct={(act) => onActs([act])} />
        <Button kind="plain" onPress={() => onActs([])}>
          {w.atRest}
        </Button>
      </div>
    </section>
  );
}

/** For authors: the notation on the left; the drawing, the rules and what it does on the right. */
export function Bench({ ground }: ScreenProps) {
  const w = words('bench');
  const [text, setText] = useState(w.example);
  const [acts, setActs] = useState<readonly Act[]>([]);
  const { read, drawn, live, refused } = useWritten(ground, text, acts);
  const go = (problem: ToldProblem): void => goTo(text, problem);
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
            <WhatItDoes
              live={live}
              onActs={(more) => setActs(more.length > 0 ? [...acts, ...more].slice(-MOST_ACTS) : [])}
            />
          )}
        </div>
      </div>
    </div>
  );
}
