import type { ExplanationStep, QuestionOf } from '../../../shared/question.ts';
import { listed } from '../ask/situation.ts';
import { liveState } from '../items.ts';
import { standpointOf } from '../solving.ts';
import { type History, historyOf, mechanismsOn, relevantTo } from './history.ts';
import { reachOf, stopsBefore } from './potential.ts';
import { type Sentence, Telling } from './telling.ts';
import { aboutHops, hopText, opensWords, turned } from './wording.ts';

/** One terminal: the pole it is joined to, or what is open between. */
function sayTerminal(telling: Telling, terminal: string, state: string): void {
  const { history } = telling;
  const { machine, stages } = history;
  const last = stages.at(-1)!;
  const reach = reachOf(machine, last.state, terminal);
  if (state === 'live' && reach) {
    const way = [reach.pole, ...[...reach.hops].reverse().map((hop) => hopText(turned(hop)))].join(', ');
    const through = reach.loads.length > 0 ? ` It comes through ${listed(reach.loads)}` : '';
    telling.say(last.after, `${terminal} is live: ${way}, ${terminal}${through && `.${through}`}`, [
      terminal,
      ...aboutHops(reach.hops),
    ]);
    return;
  }
  const open = stopsBefore(machine, last.state, terminal);
  const trace = { load: '', fed: false, path: [], stoppedBy: [...open] };
  const why =
    open.length > 0
      ? opensWords(history, open, last.state)
      : reach
        ? `closed contacts and loads join it only to ${reach.pole}`
        : 'nothing joins it to a supply';
  telling.say(last.after, `${terminal} is dead: ${why}`, [terminal], [trace]);
  telling.restBehind([trace], last.after);
}

export function tellLive(question: QuestionOf<'still-live'>): {
  history: History;
  sentences: readonly Sentence[];
} {
  const { circuit, scenario, asked } = question;
  const history = historyOf(circuit, scenario);
  const { machine, stages } = history;
  const last = stages.at(-1)!;
  // Relays matter here as far as their contacts lie between a terminal and a supply.
  const between = asked.flatMap((terminal) => {
    const reach = reachOf(machine, last.state, terminal);
    return mechanismsOn(history, {
      load: '',
      fed: false,
      path: [...(reach?.hops ?? [])],
      stoppedBy: [...stopsBefore(machine, last.state, terminal)],
    });
  });
  const coils = machine.plan.loads.flatMap(({ id, mechanism }) => (between.includes(mechanism) ? [id] : []));
  const relevant = relevantTo(
    history,
    coils.map((load) => ({ load, after: last.after })),
  );
  const telling = new Telling(history, relevant);
  for (const stage of stages) telling.stage(stage);
  const standpoint = standpointOf(machine, last.state);
  for (const terminal of asked) sayTerminal(telling, terminal, liveState(standpoint, terminal));
  return { history, sentences: telling.sentences };
}

export const explainLive = (question: QuestionOf<'still-live'>): ExplanationStep[] => [
  ...tellLive(question).sentences.map(({ text, about }) => ({ text, about: [...about] })),
  {
    text: 'On site this is proved, never taken from a drawing: isolate, lock off, prove dead with a proved tester.',
    about: [],
  },
];

export function hintLive({ circuit, scenario }: QuestionOf<'still-live'>): string {
  const opened = scenario.acts.findLast(({ kind }) => kind === 'open');
  const supplies = circuit.supplies.map(({ name }) => name).join(' and ');
  return opened && 'device' in opened
    ? `Look first at the two sides of ${opened.device}: which supply comes to it, and what is behind it? Then ask of each terminal to which supply (${supplies}) closed contacts join it.`
    : `Ask of each terminal to which supply (${supplies}) closed contacts join it.`;
}
