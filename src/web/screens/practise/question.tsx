import { useEffect, useRef, useState } from 'preact/hooks';
import type { Asked } from '../../../../shared/question.ts';
import { answered, settings } from '../../learner.ts';
import { DrawingInWords } from '../../parts/drawing-in-words.tsx';
import { unbroken } from '../../parts/unbroken.ts';
import { answerOf } from '../../question/answer.ts';
import { AnswerForm } from '../../question/answer-form.tsx';
import { AskedDrawing } from '../../question/asked-drawing.tsx';
import { markParts } from '../../question/mark-parts.ts';
import { momentsAsked, openMoment, touchableOf } from '../../question/on-drawing.ts';
import { Situation } from '../../question/situation.tsx';
import type { Ground } from '../../start.ts';
import { words } from '../../words.ts';
import { Bar } from './bar.tsx';
import { Result } from './result.tsx';
import type { Phase, Session } from './session.ts';
import { OneSkill, PlacingUnderWay, WhereToBegin } from './where-to-begin.tsx';

/** In its first questions somebody is told that the drawing itself is answered on. */
const TOLD_FOR = 3;

interface Props {
  readonly session: Session;
  readonly ground: Ground;
  readonly phase: Extract<Phase, { kind: 'asking' | 'marked' }>;
}

function Heading({ session, ground: { supply }, phase }: Props) {
  const { practise } = words('first');
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
      <p class="cell">{practise.question(number)}</p>
      {supply && prepared.task.issued === undefined && <p class="cell wide own">{practise.ownPractice}</p>}
    </div>
  );
}

/** How the drawing itself is answered on; of what is plain, only the first times. */
function toldOf(asked: Asked, answered: number): string | undefined {
  const { onDrawing } = words('first').practise;
  if (asked.form === 'reading') return undefined;
  if (asked.form === 'choice') return onDrawing.terminals;
  if (momentsAsked(asked).length > 0) return onDrawing.moments;
  return answered < TOLD_FOR ? onDrawing.rings : undefined;
}

/** A question with its drawing: asked, or marked. */
export function Question({ session, ground, phase }: Props) {
  const { prepared } = phase;
  const { asked, task } = prepared;
  const { practise } = words('first');
  const chosen = session.chosen.value;
  const placing = session.placing.value;
  const Parts = markParts.value;
  const parts =
    phase.kind === 'marked'
      ? new Map(phase.judgement.mark.parts.map((part) => [part.item, part]))
      : undefined;
  const unkept = phase.kind === 'asking' ? phase.unkept : undefined;
  const [busy, setBusy] = useState(false);
  const [about, setAbout] = useState<readonly string[]>([]);
  const answer = answerOf(task.question.kind, asked, chosen);
  const [moment, setMoment] = useState<number>();
  const momentShown = parts ? momentsAsked(asked).at(-1) : (moment ?? openMoment(asked, chosen));
  const touchable = touchableOf(asked, chosen, momentShown, parts);
  useEffect(() => {
    if (phase.kind === 'asking') setAbout([]);
    setMoment(undefined);
  }, [phase.kind, task]);
  const submit = (event: Event): void => {
    event.preventDefault();
    if (!answer || busy || phase.kind !== 'asking') return;
    setBusy(true);
    const free = (): void => setBusy(false);
    session.check(answer).then(free, free);
  };
  const left = asked.items.filter(({ item }) => !chosen.get(item)).length;
  const told = toldOf(asked, answered.value);
  const first = answered.value === 0 && !settings.value.placement && phase.kind === 'asking';
  return (
    <form
      class={`question ${answered.value < TOLD_FOR ? '' : 'known'} ${parts ? 'marked' : ''}`}
      onSubmit={submit}
    >
      {unkept ? null : placing ? (
        phase.kind === 'asking' && <PlacingUnderWay session={session} asked={placing.length} />
      ) : session.only.value !== null ? (
        <OneSkill />
      ) : first ? (
        <WhereToBegin session={session} />
      ) : null}
      <div class="desk">
        <Heading session={session} ground={ground} phase={phase} />
        {phase.kind === 'asking' ? (
          <AskedDrawing
            asked={asked}
            title={task.question.circuit.title}
            drawn={prepared.drawn}
            chosen={chosen}
            touchable={touchable}
            open
            moment={momentShown}
            onMoment={setMoment}
            onChange={(states) => session.chooseAll(states)}
          />
        ) : (
          <Result phase={phase} about={about} marks={touchable} />
        )}
      </div>
      <div class="talk">
        {phase.kind === 'asking' && told && <p class="told">{told}</p>}
        <Situation sentences={asked.situation} />
        <h2>{unbroken(asked.task)}</h2>
        <fieldset class="plain-fieldset" disabled={unkept !== undefined} aria-label={practise.answer}>
          <AnswerForm
            asked={asked}
            chosen={chosen}
            onChoose={(item, state) => session.choose(item, state)}
            {...(parts ? { parts } : {})}
          />
        </fieldset>
        {unkept && (
          <p class="caution" role="alert">
            {practise.notKept(unkept.why)}
          </p>
        )}
        <p class={phase.kind === 'asking' && phase.hint ? 'hint' : 'hint empty'} role="status">
          {phase.kind === 'asking' ? unbroken(phase.hint ?? '') : ''}
        </p>
        {phase.kind === 'marked' && Parts && (
          <Parts.Explained
            ground={ground}
            mark={phase.judgement.mark}
            circuit={phase.judgement.circuit}
            scenario={phase.judgement.scenario}
            because={task.because}
            onAbout={setAbout}
          />
        )}
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
