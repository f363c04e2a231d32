import { useEffect, useState } from 'preact/hooks';
import type { Asked, ToldPart } from '../../../../shared/question.ts';
import { answered, settings } from '../../learner.ts';
import { DrawingInWords } from '../../parts/drawing-in-words.tsx';
import { Loaded } from '../../parts/loaded.tsx';
import { skillWritten } from '../../parts/written.tsx';
import { answerOf } from '../../question/answer.ts';
import { AnswerForm } from '../../question/answer-form.tsx';
import { AskedDrawing } from '../../question/asked-drawing.tsx';
import { markParts } from '../../question/mark-parts.ts';
import { momentsAsked } from '../../question/on-drawing.ts';
import { Talk } from '../../question/talk.tsx';
import { TitleBlock } from '../../question/title-block.tsx';
import { useMoment } from '../../question/use-moment.ts';
import type { Ground } from '../../start.ts';
import { spoken, unbroken, words } from '../../words.ts';
import { Bar } from './bar.tsx';
import { Result } from './result.tsx';
import type { Phase, Session } from './session.ts';
import { OneSkill, PlacingUnderWay, WhereToBegin } from './where-to-begin.tsx';

const lessonPart = spoken(['lessons'], () =>
  import('../../question/lesson-part.tsx').then(({ LessonPart }) => LessonPart),
);

/** In its first questions somebody is told that the drawing itself is answered on. */
const TOLD_FOR = 3;

interface Props {
  readonly session: Session;
  readonly ground: Ground;
  readonly phase: Extract<Phase, { kind: 'asking' | 'marked' }>;
}

function Heading({ session, ground, phase }: Props) {
  const { practise } = words('first');
  const { task, asked, skillTitle } = phase.prepared;
  const number = session.number.value;
  return (
    <TitleBlock
      title={task.question.circuit.title ?? asked.title}
      cells={[skillTitle, practise.question(number)]}
      written={skillWritten(task.skill)}
      follows={session.put < 2 ? undefined : number}
    >
      {ground.supply && task.issued === undefined && <p class="cell wide own">{practise.ownPractice}</p>}
    </TitleBlock>
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

/** Over the question: the two ways to begin on a first visit, a placement under way, or that one skill alone is put. */
function Beginning({ session, phase }: Pick<Props, 'session' | 'phase'>) {
  const asking = phase.kind === 'asking';
  if (asking && phase.unkept) return null;
  const placing = session.placing.value;
  if (placing) return asking ? <PlacingUnderWay session={session} asked={placing.length} /> : null;
  if (session.only.value !== null) return <OneSkill />;
  const first = asking && answered.value === 0 && !settings.value.placement;
  return first ? <WhereToBegin session={session} /> : null;
}

type Parts = ReadonlyMap<string, ToldPart> | undefined;

/** Where it is answered, why it could not be kept, and the hint. */
function Answering({ session, phase, parts }: Pick<Props, 'session' | 'phase'> & { parts: Parts }) {
  const { practise } = words('first');
  const { unkept, hint } = phase.kind === 'asking' ? phase : { unkept: undefined, hint: undefined };
  return (
    <>
      <fieldset class="plain-fieldset" disabled={unkept !== undefined} aria-label={practise.answer}>
        <AnswerForm
          asked={phase.prepared.asked}
          chosen={session.chosen.value}
          onChoose={(item, state) => session.choose(item, state)}
          {...(parts ? { parts } : {})}
        />
      </fieldset>
      {unkept && (
        <p class="caution" role="alert">
          {practise.notKept(unkept.why)}
        </p>
      )}
      <p class={hint ? 'hint' : 'hint empty'} role="status">
        {unbroken(hint ?? '')}
      </p>
    </>
  );
}

/** What is asked, and once it is marked why the right answer is right. */
function InWords({
  session,
  ground,
  phase,
  parts,
  onAbout,
}: Props & { parts: Parts; onAbout: (about: readonly string[]) => void }) {
  const { asked, task } = phase.prepared;
  const asking = phase.kind === 'asking';
  const told = asking && toldOf(asked, answered.value);
  const Marked = markParts.value;
  return (
    <Talk
      asked={asked}
      before={told && <p class="told">{told}</p>}
      answer={
        <>
          <Answering session={session} phase={phase} parts={parts} />
          {!asking && Marked && (
            <Marked.Explained
              ground={ground}
              mark={phase.judgement.mark}
              circuit={phase.judgement.circuit}
              scenario={phase.judgement.scenario}
              because={
                task.because === undefined
                  ? undefined
                  : { text: task.because, written: skillWritten(task.skill) }
              }
              onAbout={onAbout}
            >
              {phase.judgement.goesWrong && <Loaded load={lessonPart} ground={ground} skill={task.skill} />}
            </Marked.Explained>
          )}
        </>
      }
    >
      {asking && <DrawingInWords ground={ground} circuit={task.question.circuit} />}
    </Talk>
  );
}

/** A question with its drawing: asked, or marked. */
export function Question({ session, ground, phase }: Props) {
  const { asked, task, drawn } = phase.prepared;
  const chosen = session.chosen.value;
  const parts =
    phase.kind === 'marked'
      ? new Map(phase.judgement.mark.parts.map((part) => [part.item, part]))
      : undefined;
  const [busy, setBusy] = useState(false);
  const [about, setAbout] = useState<readonly string[]>([]);
  const answer = answerOf(task.question.kind, asked, chosen);
  const on = useMoment(asked, chosen, task, parts);
  useEffect(() => {
    if (phase.kind === 'asking') setAbout([]);
  }, [phase.kind, task]);
  const submit = (event: Event): void => {
    event.preventDefault();
    if (!answer || busy || phase.kind !== 'asking') return;
    setBusy(true);
    const free = (): void => setBusy(false);
    session.check(answer).then(free, free);
  };
  const left = asked.items.filter(({ item }) => !chosen.get(item)).length;
  return (
    <form
      class={`question ${answered.value < TOLD_FOR ? '' : 'known'} ${parts ? 'marked' : ''}`}
      onSubmit={submit}
    >
      <Beginning session={session} phase={phase} />
      <div class="desk">
        <Heading session={session} ground={ground} phase={phase} />
        {phase.kind === 'asking' ? (
          <AskedDrawing
            asked={asked}
            title={task.question.circuit.title}
            drawn={drawn}
            chosen={chosen}
            open
            onChange={(states) => session.chooseAll(states)}
            {...on}
          />
        ) : (
          <Result phase={phase} about={about} marks={on.touchable} />
        )}
      </div>
      <InWords session={session} ground={ground} phase={phase} parts={parts} onAbout={setAbout} />
      <Bar session={session} phase={phase} left={left} able={answer !== undefined && !busy} />
    </form>
  );
}
