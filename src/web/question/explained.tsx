import type { ComponentChildren } from 'preact';
import type { Circuit } from '../../../shared/circuit.ts';
import type { ToldMark } from '../../../shared/question.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import { CircuitTiming } from '../parts/circuit-timing.tsx';
import { DrawingInWords } from '../parts/drawing-in-words.tsx';
import type { Written } from '../parts/written.tsx';
import type { Ground } from '../start.ts';
import { words } from '../words.ts';
import { Why } from './why.tsx';

interface Props {
  readonly ground: Ground;
  readonly mark: ToldMark;
  /** What is shown beside it, as it was run. */
  readonly circuit: Circuit;
  readonly scenario: Scenario;
  /** What the author of the question says about it. */
  readonly because?: { readonly text: string; readonly written: Written } | undefined;
  /** Points at devices on the drawing. */
  readonly onAbout: (about: readonly string[]) => void;
  /** Under the explanation. */
  readonly children?: ComponentChildren;
}

/** The idea behind a wrong answer, and why the right one is right. */
export function Explained({ ground, mark, circuit, scenario, because, onAbout, children }: Props) {
  const { explained } = words('first').practise;
  return (
    <div class="explained">
      {mark.misconceptions.length > 0 && (
        <section class="idea">
          <h2>{explained.ideas(mark.misconceptions.length)}</h2>
          {mark.misconceptions.map(({ id, idea, advice }) => (
            <p key={id}>
              {idea} {advice}
            </p>
          ))}
        </section>
      )}
      <section>
        <h2>{explained.why}</h2>
        <Why explanation={mark.explanation} onAbout={onAbout} />
      </section>
      {because && (
        <p class="because" {...because.written}>
          {because.text}
        </p>
      )}
      {children}
      {scenario.acts.some(({ kind }) => kind === 'wait') && (
        <CircuitTiming ground={ground} circuit={circuit} scenario={scenario} />
      )}
      <p>
        <a class="onward" href="#/try/last">
          {explained.tryThis}
        </a>
      </p>
      <DrawingInWords ground={ground} circuit={circuit} />
    </div>
  );
}
