import type { ComponentChildren } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import type { Question, ToldMark } from '../../../shared/question.ts';
import { Player } from '../parts/player.tsx';
import type { Ground } from '../start.ts';
import { lastCircuit } from '../try-circuit.ts';
import { words } from '../words.ts';
import { AnswerForm } from './answer-form.tsx';
import { meterShowing } from './asked-drawing.tsx';
import { Explained } from './explained.tsx';
import { momentsAsked, touchableOf } from './on-drawing.ts';
import { Talk } from './talk.tsx';
import { type MarkedDrawing, useMarkedDrawing } from './use-drawn.ts';

const NOTHING_CHOSEN: ReadonlyMap<string, string> = new Map();

interface Props {
  readonly ground: Ground;
  readonly question: Question;
  readonly mark: ToldMark;
  /** Cells of the title block beside the circuit's title. */
  readonly cells: readonly string[];
  /** Said of the mark, over the answers. */
  readonly verdict?: ComponentChildren;
  /** Under the explanation. */
  readonly children?: ComponentChildren;
  /** At the foot, within reach. */
  readonly bar?: ComponentChildren;
}

function InWords({
  ground,
  mark,
  shown,
  verdict,
  children,
  onAbout,
}: Omit<Props, 'question' | 'cells' | 'bar'> & {
  readonly shown: MarkedDrawing;
  readonly onAbout: (about: readonly string[]) => void;
}) {
  const { asked, circuit, scenario } = shown;
  return (
    <Talk
      asked={asked}
      answer={
        <>
          {verdict}
          <AnswerForm
            asked={asked}
            chosen={NOTHING_CHOSEN}
            onChoose={() => undefined}
            parts={new Map(mark.parts.map((part) => [part.item, part]))}
          />
          <Explained ground={ground} mark={mark} circuit={circuit} scenario={scenario} onAbout={onAbout} />
        </>
      }
    >
      {children}
    </Talk>
  );
}

/** A question with its mark: what is right, why, and the run in steps. */
export function MarkedQuestion({ ground, question, mark, cells, bar, ...rest }: Props) {
  const w = words('homework');
  const shown = useMarkedDrawing(ground, question, mark);
  const [about, setAbout] = useState<readonly string[]>([]);
  useEffect(() => setAbout([]), [question]);
  useEffect(() => {
    if (shown) lastCircuit.value = shown.circuit;
  }, [shown]);
  const parts = new Map(mark.parts.map((part) => [part.item, part]));
  return (
    <div class="question known looked-through">
      <div class="desk">
        <div class="title-block">
          <h1>{question.circuit.title ?? shown?.asked.title ?? w.marked.untitled}</h1>
          {cells.map((cell, at) => (
            <p key={cell} class={at === 0 ? 'cell wide' : 'cell'}>
              {cell}
            </p>
          ))}
        </div>
        {shown ? (
          <Player
            key={question.circuit.title}
            drawn={shown.drawn}
            frames={shown.frames}
            about={about}
            marks={touchableOf(shown.asked, NOTHING_CHOSEN, momentsAsked(shown.asked).at(-1), parts)}
            {...meterShowing(shown.asked, (item) => parts.get(item)?.right)}
          />
        ) : (
          <p class="waiting" role="status">
            {words('first').parts.drawing.underWay}
          </p>
        )}
      </div>
      {shown && <InWords ground={ground} mark={mark} shown={shown} onAbout={setAbout} {...rest} />}
      {bar && <div class="bar">{bar}</div>}
    </div>
  );
}
