import type { QuestionOf } from '../../../../shared/question.ts';
import type { ExplainingSaid, HintSaid } from '../../../words/index.ts';
import { type History, historyOf, mechanismsOn, relevantTo } from '../../explain/history.ts';
import { type Reach, reachOf, stopsBefore } from '../../explain/potential.ts';
import { type Sentence, stepsOf, Telling } from '../../explain/telling.ts';
import { aboutHops, placesOpen, turned } from '../../explain/wording.ts';
import { liveState } from '../../items.ts';
import type { ExplanationStep } from '../../said.ts';
import { standpointOf } from '../../solving.ts';

function liveSaid(terminal: string, { pole, hops, loads }: Reach): ExplainingSaid {
  const way = { terminal, pole, hops: [...hops].reverse().map(turned) };
  return loads.length > 0 ? { says: 'liveThrough', ...way, loads } : { says: 'live', ...way };
}

/** One terminal: the pole it is joined to, or what is open between. */
function sayTerminal(telling: Telling, terminal: string, state: string): void {
  const { history } = telling;
  const { machine, stages } = history;
  const last = stages.at(-1)!;
  const reach = reachOf(machine, last.state, terminal);
  if (state === 'live' && reach) {
    telling.say(last.after, liveSaid(terminal, reach), [terminal, ...aboutHops(reach.hops)]);
    return;
  }
  const open = stopsBefore(machine, last.state, terminal);
  const trace = { load: '', fed: false, path: [], stoppedBy: [...open] };
  const said: ExplainingSaid =
    open.length > 0
      ? { says: 'deadOpen', terminal, open: placesOpen(history, open, last.state) }
      : reach
        ? { says: 'deadReturn', terminal, pole: reach.pole }
        : { says: 'deadAlone', terminal };
  telling.say(last.after, said, [terminal], [trace]);
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
  ...stepsOf(tellLive(question).sentences),
  { said: { says: 'onSite' }, about: [] },
];

export function hintLive({ circuit, scenario }: QuestionOf<'still-live'>): HintSaid {
  const opened = scenario.acts.findLast(({ kind }) => kind === 'open');
  const supplies = circuit.supplies.map(({ name }) => name);
  return opened && 'device' in opened
    ? { says: 'bothSidesFirst', device: opened.device, supplies }
    : { says: 'eachTerminal', supplies };
}
