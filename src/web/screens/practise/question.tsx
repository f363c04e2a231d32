import { useEffect, useRef, useState } from 'preact/hooks';
import type { MarkPart } from '../../../../shared/question.ts';
import type { Prepared } from '../../engine/messages.ts';
import { answers, settings } from '../../learner.ts';
import { Board } from '../../parts/board.tsx';
import { Drawing, type Touchable } from '../../parts/drawing.tsx';
import { DrawingInWords } from '../../parts/drawing-in-words.tsx';
import { Player } from '../../parts/player.tsx';
import { unbroken } from '../../parts/unbroken.ts';
import type { Ground } from '../../start.ts';
import { answerOf } from './answer.ts';
import { AnswerForm } from './answer-form.tsx';
import { Explained } from './explained.tsx';
import type { Phase, Session } from './session.ts';
import { Situation } from './situation.tsx';
import { PlacingUnderWay, WhereToBegin } from './where-to-begin.tsx';

/** In its first questions somebody is told that the drawing itself is answered on. */
const TOLD_FOR = 3;

/** A relay is answered at its coil, not at each of its contacts. */
const PLACES = ['load', 'coil', 'input', 'terminal'] as const;

/** What can be answered on the drawing: every item that stands at one place of it and in one state. */
function touchableOf(
  { asked, task }: Prepared,
  chosen: ReadonlyMap<string, string>,
  parts: ReadonlyMap<string, MarkPart> | undefined,
): ReadonlyMap<string, Touchable> {
  const { kind } = task.question;
  if (kind === 'wiring' || kind === 'sequence' || kind === 'meter') return new Map();
  return new Map(
    asked.items.map(({ item, label }) => {
      const part = parts?.get(item);
      return [item, { label, state: chosen.get(item), at: PLACES, ...(part ? { mark: part } : {}) }];
    }),
  );
}

interface Props {
  readonly session: Session;
  readonly ground: Ground;
  readonly phase: Extract<Phase, { kind: 'asking' | 'marked' }>;
}

function Heading({ session, phase }: Omit<Props, 'ground'>) {
  const { prepared } = phase;
  const number = session.number.value;
  const heading = useRef<HTMLHeadingElement>(null);
  // The focus follows the question, so that a keyboard and a screen reader begin where reading does.
  useEffect(() => {
    if (session.put < 2) return;
    heading.current?.focus({ preventScroll: true });
    scrollTo({ top: 0 });
  }, [session, number]);
  return (
    <div class="title-block">
      <h1 ref={heading} tabIndex={-1}>
        {prepared.task.question.circuit.title ?? prepared.asked.title}
      </h1>
      <p class="cell wide">{prepared.skillTitle}</p>
      <p class="cell">Question {number}</p>
    </div>
  );
}

/** Check and hint, then the verdict and the way on: always within reach. */
function Bar({ session, phase, left, able }: Omit<Props, 'ground'> & { left: number; able: boolean }) {
  const next = useRef<HTMLButtonElement>(null);
  const marked = phase.kind === 'marked';
  useEffect(() => {
    if (marked) next.current?.focus({ preventScroll: true });
  }, [marked]);
  const mark = phase.kind === 'marked' ? phase.judgement.judged.mark : undefined;
  const right = mark?.parts.filter(({ correct }) => correct).length ?? 0;
  const verdict =
    mark === undefined
      ? ''
      : mark.correct
        ? 'Right.'
        : mark.parts.length === 1
          ? 'Not right.'
          : `${right} of ${mark.parts.length} right.`;
  return (
    <div class="bar">
      <p class={mark ? `verdict ${mark.correct ? 'right' : 'wrong'}` : 'verdict'} role="status">
        {verdict}
      </p>
      {phase.kind === 'marked' ? (
        <button
          ref={next}
          type="button"
          class="button main"
          // A key held down from checking doesn't skip the explanation.
          onKeyDown={(event) => event.repeat && event.preventDefault()}
          onClick={() => session.next()}
        >
          Next
        </button>
      ) : (
        <>
          <button type="submit" class="button main" disabled={!able}>
            {left > 0 ? `Check (${left} left)` : 'Check'}
          </button>
          {phase.hint === undefined && (
            <button type="button" class="button plain" onClick={() => session.hint()}>
              Hint (counts as help)
            </button>
          )}
        </>
      )}
    </div>
  );
}

/** A question with its drawing: asked, or marked. */
export function Question({ session, ground, phase }: Props) {
  const { prepared } = phase;
  const { asked, task } = prepared;
  const chosen = session.chosen.value;
  const placing = session.placing.value;
  const parts =
    phase.kind === 'marked'
      ? new Map(phase.judgement.judged.mark.parts.map((part) => [part.item, part]))
      : undefined;
  const [busy, setBusy] = useState(false);
  const [about, setAbout] = useState<readonly string[]>([]);
  const answer = answerOf(task.question, asked, chosen);
  const touchable = touchableOf(prepared, chosen, parts);
  useEffect(() => {
    if (phase.kind === 'asking') setAbout([]);
  }, [phase.kind]);
  const submit = (event: Event): void => {
    event.preventDefault();
    if (!answer || busy || phase.kind !== 'asking') return;
    setBusy(true);
    const free = (): void => setBusy(false);
    session.check(answer).then(free, free);
  };
  const left = asked.items.length - asked.items.filter(({ item }) => chosen.has(item)).length;
  const first = answers.value.length === 0 && !settings.value.placement && phase.kind === 'asking';
  return (
    <form class={answers.value.length < TOLD_FOR ? 'question' : 'question known'} onSubmit={submit}>
      {placing ? (
        phase.kind === 'asking' && <PlacingUnderWay session={session} asked={placing.length} />
      ) : first ? (
        <WhereToBegin session={session} />
      ) : null}
      <div class="desk">
        <Heading session={session} phase={phase} />
        {phase.kind === 'asking' ? (
          <Board>
            <Drawing
              drawn={prepared.drawn}
              description={`Control drawing: ${task.question.circuit.title ?? asked.title}. Everything is drawn at rest. Further down it stands in words.`}
              touchable={touchable}
              {...(touchable.size === 0 ? { asked: asked.items.flatMap(({ about: at }) => at) } : {})}
              onTouch={(item) =>
                session.turn(item, asked.items.find((entry) => entry.item === item)?.choices ?? [])
              }
            />
          </Board>
        ) : (
          <Player
            key={task.circuit}
            drawn={phase.judgement.drawn}
            frames={phase.frames}
            about={about}
            marks={touchable}
          />
        )}
      </div>
      <div class="talk">
        {phase.kind === 'asking' && touchable.size > 0 && answers.value.length < TOLD_FOR && (
          <p class="told">Touch each blue ring on the drawing, or choose below.</p>
        )}
        <Situation sentences={asked.situation} />
        <h2>{unbroken(asked.task)}</h2>
        <AnswerForm
          asked={asked}
          chosen={chosen}
          onChoose={(item, state) => session.choose(item, state)}
          {...(parts ? { parts } : {})}
        />
        <p class={phase.kind === 'asking' && phase.hint ? 'hint' : 'hint empty'} role="status">
          {phase.kind === 'asking' ? unbroken(phase.hint ?? '') : ''}
        </p>
        {phase.kind === 'marked' && <Explained ground={ground} phase={phase} onAbout={setAbout} />}
        {asked.cautions.length > 0 && (
          <div class="caution">
            {asked.cautions.map((caution) => (
              <p key={caution}>{caution}</p>
            ))}
          </div>
        )}
        {phase.kind === 'asking' && <DrawingInWords ground={ground} circuit={task.question.circuit} />}
      </div>
      <Bar session={session} phase={phase} left={left} able={answer !== undefined && !busy} />
    </form>
  );
}
