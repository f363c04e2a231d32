import type { ComponentChildren } from 'preact';
import type { Asked } from '../../../shared/question.ts';
import { unbroken } from '../words.ts';
import { Situation } from './situation.tsx';

/** Beside the drawing: what it starts from, the task, where it is answered and what comes of it, and what to beware of. */
export const Talk = ({
  asked,
  before,
  answer,
  children,
}: {
  asked: Asked;
  before?: ComponentChildren;
  answer: ComponentChildren;
  /** Under the cautions. */
  children?: ComponentChildren;
}) => (
  <div class="talk">
    {before}
    <Situation sentences={asked.situation} />
    <h2>{unbroken(asked.task)}</h2>
    {answer}
    {asked.cautions.length > 0 && (
      <div class="caution">
        {asked.cautions.map((caution) => (
          <p key={caution}>{caution}</p>
        ))}
      </div>
    )}
    {children}
  </div>
);
