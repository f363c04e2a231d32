import { useEffect, useState } from 'preact/hooks';
import type { Asked, ToldPart } from '../../../shared/question.ts';
import type { Chosen } from './answer.ts';
import { momentsAsked, openMoment, touchableOf } from './on-drawing.ts';

/** The moment that is answered on the drawing, and what can be touched there: the first that is open, until one is chosen. */
export function useMoment(
  asked: Asked,
  chosen: Chosen,
  /** Another one: no moment of it has been chosen yet. */
  question: unknown,
  /** How it was marked, by item. */
  parts?: ReadonlyMap<string, ToldPart>,
) {
  const [picked, onMoment] = useState<number>();
  useEffect(() => onMoment(undefined), [question]);
  const moment = parts ? momentsAsked(asked).at(-1) : (picked ?? openMoment(asked, chosen));
  return { moment, onMoment, touchable: touchableOf(asked, chosen, moment, parts) };
}
