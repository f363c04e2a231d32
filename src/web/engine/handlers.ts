/** What the engine does for each request: the pure core, and nothing that a page has. */

import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import { actInWords, checkRules, problemOf, readCircuitWithPlaces } from '../../circuit/index.ts';
import { shownState } from '../../drawing/index.ts';
import { type Course, courseOf, judge, nextTask } from '../../practice/index.ts';
import { askQuestion, hintFor, markAnswer, rightAnswer } from '../../questions/index.ts';
import { meter, solve } from '../../solver/index.ts';
import { liveActs } from './live-acts.ts';
import type { Frame, Requests, View } from './messages.ts';
import { progressOf } from './progress.ts';
import { draw } from './sheets.ts';

export type Handlers = { readonly [K in keyof Requests]: (take: Requests[K]['take']) => Requests[K]['give'] };

const REST: Scenario = { start: 'live', faults: [], acts: [] };

/** The circuit after each act of the scenario, the start included. */
function framesOf(circuit: Circuit, scenario: Scenario, asked: readonly string[], view: View): Frame[] {
  return Array.from({ length: scenario.acts.length + 1 }, (_, count) => {
    const acts = scenario.acts.slice(0, count);
    const last = acts.at(-1);
    const state = shownState(
      solve(circuit, { ...scenario, acts }),
      count === scenario.acts.length ? asked : [],
    );
    return {
      caption: last ? `${count}. ${actInWords(last, circuit)}` : 'As it starts',
      drawn: draw(circuit, view, state),
    };
  });
}

/** Items of an answer as loads to pick out: `2 -H1` of a sequence is -H1. */
const loadsAsked = (items: readonly string[]): string[] => [
  ...new Set(items.map((item) => item.split(' ').at(-1)!)),
];

/** The handlers of one engine; it holds the bank between requests. */
export function makeHandlers(): Handlers {
  let course: Course | undefined;
  const opened = (): Course => {
    if (!course) throw new Error('The question bank has not been opened.');
    return course;
  };
  return {
    open: ({ bank }) => {
      const made = courseOf(bank);
      if (!made.ok) throw new Error(made.problems.map(({ message }) => message).join(' '));
      course = made.value;
      return { skills: course.skills.size };
    },
    next: ({ recalls, at, seed, number, recent, seen, only, view }) => {
      const next = nextTask({
        course: opened(),
        recalls: new Map(recalls),
        at,
        seed,
        number,
        recent,
        seen: new Set(seen),
        ...(only === undefined ? {} : { only }),
      });
      if (!next.ok)
        return {
          nothing:
            next.reason === 'nothing'
              ? 'Nothing needs practice now.'
              : `No new circuit was found for ${next.skill}.`,
        };
      const { task } = next;
      return {
        task,
        asked: askQuestion(task.question),
        drawn: draw(task.question.circuit, view),
        skillTitle: opened().skills.get(task.skill)?.title ?? task.skill,
      };
    },
    hint: ({ task }) => hintFor(task.question),
    ask: ({ question }) => askQuestion(question),
    mark: ({ question, answer }) => markAnswer(question, answer),
    progress: ({ recalls, at, wishes }) => progressOf(opened(), new Map(recalls), at, wishes),
    judge: ({ task, given, recalls, view }) => {
      const judged = judge(task, given, new Map(recalls));
      const { circuit, scenario } = task.question;
      const asked = loadsAsked(judged.mark.parts.map(({ item }) => item));
      return { judged, right: rightAnswer(task.question), frames: framesOf(circuit, scenario, asked, view) };
    },
    draw: ({ circuit, scenario, view }) =>
      draw(circuit, view, scenario ? shownState(solve(circuit, scenario)) : undefined),
    live: ({ circuit, acts, faults, meter: points, view }) => {
      const solved = solve(circuit, { ...REST, acts: [...acts], faults: [...faults] });
      const { lamps, loads, inputs, coils, outcome } = solved.solution;
      const read = points ? meter(solved.machine, solved.state, points[0], points[1]) : undefined;
      const textOf = (id: string): string =>
        circuit.devices.find(({ name }) => name === id.split(':')[0])?.text ?? '';
      return {
        outcome,
        drawn: draw(circuit, view, shownState(solved)),
        acts: liveActs(circuit, acts).map((act) => ({ act, words: actInWords(act, circuit) })),
        readings: [
          ...Object.entries(coils).map(([item, coil]) => ({
            item,
            state: coil.operated ? 'operated' : 'at rest',
          })),
          ...Object.entries({ ...lamps, ...loads, ...inputs }).map(([item, state]) => ({ item, state })),
        ].map(({ item, state }) => ({ item, label: textOf(item), state })),
        meter:
          read &&
          (read.floating
            ? 'nothing: the two points have no common reference'
            : `${Number(read.volts.toPrecision(4))} V`),
      };
    },
    read: ({ text }) => {
      const read = readCircuitWithPlaces(text);
      if (!read.ok) return { problems: read.problems, findings: [], circuit: undefined };
      const { circuit, places } = read.value;
      return {
        problems: [],
        findings: checkRules(circuit).map((finding) => problemOf(finding, circuit, places)),
        circuit,
      };
    },
  };
}
