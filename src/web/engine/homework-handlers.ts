/** What homework needs of the engine beside practising: a question drawn without its answer, and one that was marked elsewhere. */
import { shownState } from '../../drawing/index.ts';
import { solve } from '../../solver/index.ts';
import { loadsAsked } from './answered-handlers.ts';
import type { Handlers } from './messages.ts';
import { pointsOf } from './practice-handlers.ts';
import { draw } from './sheets.ts';
import { circuitAsked, circuitMarked } from './shown-circuit.ts';

export const homeworkHandlers: Handlers<'drawAsked' | 'drawMarked'> = {
  drawAsked: ({ question, view }) => draw(circuitAsked(question), view, undefined, pointsOf(question)),
  drawMarked: ({ question, items, view }) => {
    const { circuit, scenario } = circuitMarked(question);
    const state = shownState(solve(circuit, scenario), loadsAsked(question, items));
    return { circuit, scenario, drawn: draw(circuit, view, state, pointsOf(question)) };
  },
};
