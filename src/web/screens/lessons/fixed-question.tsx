import { useEffect, useState } from 'preact/hooks';
import type { FixedQuestion as Fixed, Topic } from '../../../../shared/bank.ts';
import type { Asked, ToldMark } from '../../../../shared/question.ts';
import { Button } from '../../forms/button.tsx';
import { Board } from '../../parts/board.tsx';
import { CircuitDrawing } from '../../parts/circuit-drawing.tsx';
import { NotRun } from '../../parts/not-run.tsx';
import { written } from '../../parts/written.tsx';
import { answerOf } from '../../question/answer.ts';
import { AnswerForm } from '../../question/answer-form.tsx';
import { Situation } from '../../question/situation.tsx';
import { Why } from '../../question/why.tsx';
import type { Ground } from '../../start.ts';
import { lastCircuit } from '../../try-circuit.ts';
import { words } from '../../words.ts';

/** Why the right answer is right, and the way to try it. */
function Marked({ mark, topic, fixed: { because } }: { mark: ToldMark; topic: Topic; fixed: Fixed }) {
  return (
    <div role="status">
      <Why explanation={mark.explanation} />
      {because && (
        <p class="because" {...written(topic)}>
          {because}
        </p>
      )}
      <p class="under">
        <a class="onward" href="#/try/last">
          {words('lessons').tryThis}
        </a>
      </p>
    </div>
  );
}

/** A question of a lesson: it is marked and explained here and says nothing about the memory. */
export function FixedQuestion({ ground, topic, fixed }: { ground: Ground; topic: Topic; fixed: Fixed }) {
  const { question } = fixed;
  const [asked, setAsked] = useState<Asked>();
  const [chosen, setChosen] = useState<ReadonlyMap<string, string>>(new Map());
  const [mark, setMark] = useState<ToldMark>();
  const [refused, setRefused] = useState<Error>();
  useEffect(() => {
    ground.engine.call('ask', { question }).then(setAsked, () => undefined);
  }, [ground, question]);
  const w = words('lessons');
  if (!asked) return <p class="waiting">…</p>;
  const answer = answerOf(question.kind, asked, chosen);
  const parts = mark && new Map(mark.parts.map((part) => [part.item, part]));
  return (
    <form
      class="lesson-question"
      onSubmit={(event) => {
        event.preventDefault();
        if (!answer) return;
        ground.engine.call('mark', { question, answer }).then((given) => {
          lastCircuit.value = question.circuit;
          setMark(given);
        }, setRefused);
      }}
    >
      <Board>
        <CircuitDrawing
          ground={ground}
          circuit={question.circuit}
          scenario={mark ? question.scenario : null}
        />
      </Board>
      <Situation sentences={asked.situation} />
      {asked.cautions.map((caution) => (
        <p key={caution} class="caution">
          {caution}
        </p>
      ))}
      <h3>{asked.task}</h3>
      <AnswerForm
        asked={asked}
        chosen={chosen}
        onChoose={(item, state) => setChosen(new Map([...chosen, [item, state]]))}
        {...(parts ? { parts } : {})}
      />
      {mark ? (
        <Marked mark={mark} topic={topic} fixed={fixed} />
      ) : (
        <>
          {refused && <NotRun error={refused} />}
          <Button disabled={!answer}>{w.check}</Button>
        </>
      )}
    </form>
  );
}
