/** What runs and the other screens need of the engine; it is fetched once the first question stands there. */
import type { Circuit } from '../../../shared/circuit.ts';
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
import { placing, withPlacement } from '../../practice/index.ts';
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
import type { Frame, Handlers, Live, RequestName, Requests } from './messages.ts';
import { meterAt } from './meter-place.ts';
import type { Opened } from './opened.ts';
import { pointsIn } from './points.ts';
import type { PracticeRequest } from './practice-handlers.ts';
import { plannedToday, progressOf } from './progress.ts';
import { drawLaidOut, sheetsIn } from './sheets.ts';

/** More moments than this nobody steps through. */
const MOST_FRAMES = 40;

const REST: Scenario = { start: 'live', faults: [], acts: [] };

/** The way to the end, moment by moment; the end is the last one, with what was asked picked out. */
function runOf(
  held: Opened,
  words: AnsweringWords,
  { question, items, view }: Requests['run']['take'],
): Requests['run']['give'] {
  const { circuit, scenario } = shownWithMark(question);
  const { steps, cutOff } = stepsOf(circuit, scenario, { most: MOST_FRAMES });
  const frameOf = sheetsIn(held.words, circuit, view);
  const frames = steps.map(
    ({ caption, state }): Frame => ({ caption: tellCaption(words, caption), svgs: frameOf(state) }),
  );
  const end = shownState(solve(circuit, scenario), loadsAsked(question, items));
  const last = frames.pop();
  return {
    frames: [...frames, { caption: last?.caption || words.drawing.inTheEnd, svgs: frameOf(end) }],
    cutOff,
  };
}

/** How coils, lamps, loads and inputs stand, each with its text on the drawing. */
function readingsOf(
  held: Opened,
  words: AnsweringWords,
  circuit: Circuit,
  { lamps, loads, inputs, coils }: ReturnType<typeof solve>['solution'],
): Live['readings'] {
  const textOf = (id: string): string =>
    circuit.devices.find(({ name }) => name === id.split(':')[0])?.text ?? '';
  return [
    ...Object.entries(coils).map(([item, coil]) => ({
      item,
      state: coil.operated ? words.readings.operated : words.readings.atRest,
    })),
    ...Object.entries({ ...lamps, ...loads, ...inputs }).map(([item, says]) => ({
      item,
      state: say(held.words.answers, { says }),
    })),
  ].map(({ item, state }) => ({ item, label: textOf(item), state }));
}

/** A circuit as it stands after what was done to it, and what can be done next. */
function liveOf(
  held: Opened,
  words: AnsweringWords,
  { circuit, acts, faults, meter, view }: Requests['live']['take'],
): Live {
  const solved = solve(circuit, { ...REST, acts: [...acts], faults: [...faults] });
  const scene = layOut(held.words, circuit, PROFILES[view.width]);
  return {
    outcome: solved.solution.outcome,
    drawn: drawLaidOut(scene, view, shownState(solved), meterAt(meter)),
    points: pointsIn(scene),
    acts: liveActs(circuit, acts).map((act) => ({
      act,
      words: say(held.words.acts, actSaid(act, circuit)),
    })),
    readings: readingsOf(held, words, circuit, solved.solution),
    meter: meter && { volts: readingOf(solved, meter) },
  };
}

/** What the notation says, or what is wrong with it; and what its drawing breaks of the rules. */
function readIn(words: AnsweringWords, text: string): Requests['read']['give'] {
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
}

export type LaterRequest = Exclude<RequestName, PracticeRequest>;

export function laterHandlers(held: Opened, words: AnsweringWords): Handlers<LaterRequest> {
  return {
    ...answeredHandlers(held, words),
    ...homeworkHandlers(held),
    run: (take) => {
      checkQuestion(held.guarded, take.question);
      return runOf(held, words, take);
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
    placing: ({ answers, most }) => placing(held.course.graph, answers, most),
    progress: ({ placement, ...wanted }) =>
      progressOf(words, held.course, withPlacement(held.memory.recalls, placement), wanted),
    planned: ({ placement, ...wanted }) =>
      plannedToday(held.course, withPlacement(held.memory.recalls, placement), wanted),
    live: (take) => {
      checkCircuit(held.guarded, take.circuit);
      return liveOf(held, words, take);
    },
    read: ({ text }) => readIn(words, text),
  };
}
