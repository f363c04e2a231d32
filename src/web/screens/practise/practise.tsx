import { useEffect, useMemo, useRef, useState } from 'preact/hooks';
import type { MarkPart } from '../../../../shared/question.ts';
import type { Drawn, Prepared } from '../../engine/messages.ts';
import { Drawing, type Touchable } from '../../parts/drawing.tsx';
import { Player } from '../../parts/player.tsx';
import type { Ground } from '../../start.ts';
import { theme } from '../../theme.ts';
import { currentView } from '../../view.ts';
import { answerOf } from './answer.ts';
import { AnswerForm } from './answer-form.tsx';
import { Marked } from './marked.tsx';
import { type Phase, Session } from './session.ts';

function touchableOf(
  prepared: Prepared,
  chosen: ReadonlyMap<string, string>,
  parts: ReadonlyMap<string, MarkPart> | undefined,
): ReadonlyMap<string, Touchable> {
  return new Map(
    prepared.asked.items
      .filter(
        ({ choices }) =>
          choices.length > 0 &&
          prepared.task.question.kind !== 'wiring' &&
          prepared.task.question.kind !== 'sequence',
      )
      .map(({ item, label }) => {
        const part = parts?.get(item);
        return [
          item,
          {
            label,
            state: chosen.get(item),
            ...(part ? { mark: part.correct ? ('right' as const) : ('wrong' as const) } : {}),
          },
        ];
      }),
  );
}

/** A drawing in the colours and width of the page as it is now, whatever it was made for. */
function useRedrawn(ground: Ground, prepared: Prepared): Drawn {
  const [drawn, setDrawn] = useState(prepared.drawn);
  const view = `${currentView().width} ${theme.value}`;
  const first = useRef(view);
  useEffect(() => setDrawn(prepared.drawn), [prepared]);
  useEffect(() => {
    if (first.current === view) return;
    first.current = view;
    ground.engine
      .call('draw', { circuit: prepared.task.question.circuit, scenario: null, view: currentView() })
      .then(setDrawn, () => undefined);
  }, [ground, prepared, view]);
  return drawn;
}

function Question({
  session,
  ground,
  phase,
}: {
  session: Session;
  ground: Ground;
  phase: Extract<Phase, { kind: 'asking' | 'marked' }>;
}) {
  const { prepared } = phase;
  const { asked, task } = prepared;
  const chosen = session.chosen.value;
  const parts =
    phase.kind === 'marked'
      ? new Map(phase.judgement.judged.mark.parts.map((part) => [part.item, part]))
      : undefined;
  const drawn = useRedrawn(ground, prepared);
  const [busy, setBusy] = useState(false);
  const [about, setAbout] = useState<readonly string[]>([]);
  const heading = useRef<HTMLHeadingElement>(null);
  const answer = answerOf(task.question, asked, chosen);
  // The focus follows the question, so that a keyboard and a screen reader begin where reading does.
  useEffect(() => {
    setAbout([]);
    if (session.number.peek() > 1) heading.current?.focus();
  }, [session, prepared]);
  const submit = (event: Event): void => {
    event.preventDefault();
    if (!answer || busy) return;
    setBusy(true);
    session.check(answer).finally(() => setBusy(false));
  };
  const left = asked.items.length - asked.items.filter(({ item }) => chosen.has(item)).length;
  const description = `Control drawing: ${task.question.circuit.title ?? ''}. Everything is drawn at rest.`;
  return (
    <div class="question">
      <section class="board" aria-label="Drawing">
        {phase.kind === 'asking' ? (
          <Drawing
            drawn={drawn}
            description={description}
            touchable={touchableOf(prepared, chosen, parts)}
            onTouch={(item) =>
              session.turn(item, asked.items.find((entry) => entry.item === item)?.choices ?? [])
            }
          />
        ) : (
          <Player frames={phase.judgement.frames} about={about} />
        )}
      </section>
      <form class="talk" onSubmit={submit}>
        <div class="block">
          <h1 ref={heading} tabIndex={-1}>
            {task.question.circuit.title ?? asked.title}
          </h1>
          <p class="of">
            Question {session.number.value} · {prepared.skillTitle}
          </p>
        </div>
        <div class="situation">
          {asked.situation.map((sentence) => (
            <p key={sentence}>{sentence}</p>
          ))}
        </div>
        {asked.cautions.map((caution) => (
          <p key={caution} class="caution">
            {caution}
          </p>
        ))}
        <h2>{asked.task}</h2>
        <AnswerForm
          asked={asked}
          chosen={chosen}
          onChoose={(item, state) => session.choose(item, state)}
          {...(parts ? { parts } : {})}
        />
        {phase.kind === 'asking' ? (
          <>
            {phase.hint && (
              <p class="hint" role="status">
                {phase.hint}
              </p>
            )}
            <div class="row actions">
              <button type="submit" class="button main" disabled={!answer || busy}>
                {answer || asked.items.length < 2 ? 'Check' : `Check (${left} to answer)`}
              </button>
              {!phase.hint && (
                <button type="button" class="button plain" onClick={() => session.hint()}>
                  Hint (then it counts as helped)
                </button>
              )}
            </div>
          </>
        ) : (
          <Marked phase={phase} onAbout={setAbout} onNext={() => session.next()} />
        )}
      </form>
    </div>
  );
}

/** The practice: one question after another. */
export function Practise({ ground }: { ground: Ground }) {
  const session = useMemo(() => new Session(ground, currentView), [ground]);
  useEffect(() => {
    session.next();
  }, [session]);
  const phase = session.phase.value;
  switch (phase.kind) {
    case 'preparing':
      return <p role="status">Drawing a circuit…</p>;
    case 'nothing':
    case 'failed':
      return (
        <div class="opening" role="status">
          <p>{phase.why}</p>
          <button type="button" class="button" onClick={() => session.next()}>
            Try again
          </button>
        </div>
      );
    default:
      return <Question session={session} ground={ground} phase={phase} />;
  }
}
