/** What runs and the other screens need of the engine; it is fetched once the first question stands there. */
import type { Scenario } from '../../../shared/scenario.ts';
import { actSaid, checkRules, problemOf, readCircuitWithPlaces } from '../../circuit/index.ts';
import {
  described,
  layOut,
  PROFILES,
  shownState,
  stepsOf,
  svgOf,
  tellCaption,
  timingPicture,
} from '../../drawing/index.ts';
import { withPlacement } from '../../practice/index.ts';
import {
  askQuestion,
  explain,
  loadsAsked,
  markAnswer,
  readingOf,
  shownWithMark,
  tellMark,
  tellQuestion,
} from '../../questions/index.ts';
import { everyRule, solve } from '../../solver/index.ts';
import { type AnsweringWords, say } from '../../words/index.ts';
import { tellProblem, tellProblems } from '../../words/problems.ts';
import { answeredHandlers } from './answered-handlers.ts';
import { checkCircuit, checkQuestion } from './guarded.ts';
import { homeworkHandlers } from './homework-handlers.ts';
import { liveActs } from './live-acts.ts';
import type { Frame, Handlers, RequestName } from './messages.ts';
import type { Opened } from './opened.ts';
import { pointsIn } from './points.ts';
import type { PracticeRequest } from './practice-handlers.ts';
import { plannedToday, progressOf } from './progress.ts';
import { drawLaidOut, sheetsIn } from './sheets.ts';

/** More moments than this nobody steps through. */
const MOST_FRAMES = 40;

const REST: Scenario = { start: 'live', faults: [], acts: [] };

export type LaterRequest = Exclude<RequestName, PracticeRequest>;

export function laterHandlers(held: Opened, words: AnsweringWords): Handlers<LaterRequest> {
  return {
    ...answeredHandlers(held, words),
    ...homeworkHandlers,
    run: ({ question, items, view }) => {
      checkQuestion(held.guarded, question);
      const { circuit, scenario } = shownWithMark(question);
      const { steps, cutOff } = stepsOf(circuit, scenario, { most: MOST_FRAMES });
      const frameOf = sheetsIn(circuit, view);
      const frames = steps.map(
        ({ caption, state }): Frame => ({ caption: tellCaption(words, caption), svgs: frameOf(state) }),
      );
      const end = shownState(solve(circuit, scenario), loadsAsked(question, items));
      const last = frames.pop();
      return {
        frames: [...frames, { caption: last?.caption || words.drawing.inTheEnd, svgs: frameOf(end) }],
        cutOff,
      };
    },
    rest: () => null,
    ask: ({ question }) => tellQuestion(held.words, askQuestion(question)),
    mark: ({ question, answer }) => {
      checkQuestion(held.guarded, question);
      return tellMark({ ...held.words, ...words }, markAnswer(question, answer), explain(question));
    },
    words: ({ circuit }) => described(circuit).map((said) => say(words.drawing.described, said)),
    timing: ({ circuit, scenario, view }) => {
      checkCircuit(held.guarded, circuit);
      const picture = timingPicture(words, circuit, scenario, { width: view.width });
      return { svg: svgOf(picture, { theme: view.theme }), width: picture.width, height: picture.height };
    },
    progress: ({ placement, ...wanted }) =>
      progressOf(words, held.course, withPlacement(held.memory.recalls, placement), wanted),
    planned: ({ placement, ...wanted }) =>
      plannedToday(held.course, withPlacement(held.memory.recalls, placement), wanted),
    live: ({ circuit, acts, faults, meter: points, view }) => {
      checkCircuit(held.guarded, circuit);
      const solved = solve(circuit, { ...REST, acts: [...acts], faults: [...faults] });
      const scene = layOut(circuit, PROFILES[view.width]);
      const { lamps, loads, inputs, coils, outcome } = solved.solution;
      const textOf = (id: string): string =>
        circuit.devices.find(({ name }) => name === id.split(':')[0])?.text ?? '';
      return {
        outcome,
        drawn: drawLaidOut(scene, view, shownState(solved), points),
        points: pointsIn(scene),
        acts: liveActs(circuit, acts).map((act) => ({
          act,
          words: say(held.words.acts, actSaid(act, circuit)),
        })),
        readings: [
          ...Object.entries(coils).map(([item, coil]) => ({
            item,
            state: coil.operated ? words.readings.operated : words.readings.atRest,
          })),
          ...Object.entries({ ...lamps, ...loads, ...inputs }).map(([item, says]) => ({
            item,
            state: say(held.words.answers, { says }),
          })),
        ].map(({ item, state }) => ({ item, label: textOf(item), state })),
        meter: points && { volts: readingOf(solved, points) },
      };
    },
    read: ({ text }) => {
      const read = readCircuitWithPlaces(text);
      if (!read.ok) return { problems: tellProblems(words, read.problems), findings: [], circuit: undefined };
      const { circuit, places } = read.value;
      return {
        problems: [],
        findings: checkRules(circuit, everyRule).map((finding) =>
          tellProblem(words, problemOf(finding, circuit, places)),
        ),
        circuit,
      };
    },
  };
}
