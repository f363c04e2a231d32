import { useEffect, useState } from 'preact/hooks';
import type { Circuit } from '../../../shared/circuit.ts';
import type { Asked, Question, ToldMark } from '../../../shared/question.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { Drawn, Frame } from '../engine/messages.ts';
import { asLongAsWanted } from '../parts/as-long-as-wanted.ts';
import type { Ground } from '../start.ts';
import { view } from '../view.ts';

/** A question drawn as it is put; the one before stays until the next is there. */
export function useDrawnAsked(ground: Ground, circuit: Circuit, asked: Asked): Drawn | undefined {
  const [drawn, setDrawn] = useState<{ of: Asked; drawn: Drawn }>();
  const wanted = view.value;
  useEffect(() => {
    const drawing = ground.engine.call('drawAsked', { circuit, asked, view: wanted });
    const take = (made: Drawn): void => setDrawn({ of: asked, drawn: made });
    return asLongAsWanted(drawing, take, () => setDrawn(undefined));
  }, [ground, circuit, asked, wanted]);
  return drawn?.of === asked ? drawn.drawn : undefined;
}

export interface MarkedDrawing {
  readonly asked: Asked;
  readonly drawn: Drawn;
  readonly circuit: Circuit;
  readonly scenario: Scenario;
  /** The run, once it has been worked out. */
  readonly frames: readonly Frame[] | undefined;
}

/** A marked question in words and as it stands in the end, and a little later the way there. */
export function useMarkedDrawing(
  ground: Ground,
  question: Question,
  mark: ToldMark,
): MarkedDrawing | undefined {
  const [shown, setShown] = useState<MarkedDrawing & { of: Question }>();
  const wanted = view.value;
  useEffect(() => {
    let here = true;
    const items = mark.parts.map(({ item }) => item);
    const { engine } = ground;
    const work = async (): Promise<void> => {
      const [asked, made] = await Promise.all([
        engine.call('ask', { question }),
        engine.call('drawMarked', { question, items, view: wanted }),
      ]);
      if (!here) return;
      setShown({ of: question, asked, ...made, frames: undefined });
      const { frames } = await engine.call('run', { question, items, view: wanted });
      if (here) setShown({ of: question, asked, ...made, frames });
    };
    // Without the run the mark still stands; without the drawing nothing is shown but the words around it.
    work().catch(() => undefined);
    return () => {
      here = false;
    };
  }, [ground, question, mark, wanted]);
  return shown?.of === question ? shown : undefined;
}
