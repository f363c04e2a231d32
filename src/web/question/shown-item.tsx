import type { ComponentChildren } from 'preact';
import type { Asked, Question, ToldMark } from '../../../shared/question.ts';
import { Board } from '../parts/board.tsx';
import { Drawing } from '../parts/drawing.tsx';
import type { Ground } from '../start.ts';
import { unbroken, words } from '../words.ts';
import { AnswerForm } from './answer-form.tsx';
import { meterShowing } from './asked-drawing.tsx';
import { Situation } from './situation.tsx';
import { useDrawnAsked } from './use-drawn.ts';
import { Why } from './why.tsx';

/** A question with its drawing at rest and the right answers, on a page with others. */
export function ShownItem({
  ground,
  question,
  asked,
  mark,
  title,
  children,
}: {
  ground: Ground;
  question: Question;
  asked: Asked;
  mark: ToldMark;
  title: string;
  children?: ComponentChildren;
}) {
  const { drawing } = words('first').parts;
  const { marked } = words('homework');
  const drawn = useDrawnAsked(ground, question.circuit, asked);
  // Nothing was answered here: what stands there is what is right.
  const parts = new Map(mark.parts.map((part) => [part.item, { ...part, correct: true }]));
  return (
    <article class="shown-item">
      <h2>{title}</h2>
      <div class="shown-drawing">
        {drawn ? (
          <Board>
            <Drawing
              drawn={drawn}
              description={drawing.atRest(question.circuit.title ?? asked.title)}
              {...meterShowing(asked, (item) => parts.get(item)?.right)}
            />
          </Board>
        ) : (
          <p class="waiting">{drawing.underWay}</p>
        )}
      </div>
      <div class="talk">
        <Situation sentences={asked.situation} />
        <h3>{unbroken(asked.task)}</h3>
        <AnswerForm asked={asked} chosen={new Map()} onChoose={() => undefined} parts={parts} />
        <details class="in-words">
          <summary>{marked.why}</summary>
          <Why explanation={mark.explanation} />
        </details>
        {children}
      </div>
    </article>
  );
}
