/** What homework needs of the engine beside practising: a question drawn without its answer, and one that was marked elsewhere. */
import { shownState } from '../../drawing/index.ts';
import { loadsAsked, shownWithMark } from '../../questions/index.ts';
import { solve } from '../../solver/index.ts';
import type { Handlers } from './messages.ts';
import { meterAt } from './meter-place.ts';
import type { Opened } from './opened.ts';
import { draw } from './sheets.ts';
import { circuitAsked, pointsIn, pointsOf } from './shown-circuit.ts';

export const homeworkHandlers = (held: Opened): Handlers<'drawAsked' | 'drawMarked'> => ({
  drawAsked: ({ circuit, asked, view }) =>
    draw(held.words, circuitAsked(circuit, asked), view, undefined, meterAt(pointsIn(asked))),
  drawMarked: ({ question, items, view }) => {
    const { circuit, scenario } = shownWithMark(question);
    const state = shownState(solve(circuit, scenario), loadsAsked(question, items));
    return { circuit, scenario, drawn: draw(held.words, circuit, view, state, meterAt(pointsOf(question))) };
  },
});
