import type { QuestionOf } from '../../../../shared/question.ts';
import type { LoadTrace } from '../../../../shared/solution.ts';
import type { ExplainingSaid, HintSaid } from '../../../words/index.ts';
import { behind } from '../../explain/behind.ts';
import { waySaid } from '../../explain/feed.ts';
import { type History, historyOf, mechanismsOn, relevantTo } from '../../explain/history.ts';
import { type Kept, keptDead, type Reach, reachOf } from '../../explain/potential.ts';
import { stepOf, storyOf } from '../../explain/story.ts';
import { hopOf, openToo, placesOpen, turned } from '../../explain/wording.ts';
import { liveState } from '../../items.ts';
import type { Decision, Explanation } from '../../said.ts';

/** Where a terminal gets its potential from, or what keeps it away. */
interface Terminal {
  readonly terminal: string;
  readonly reach: Reach | undefined;
  readonly trace: LoadTrace;
  readonly besides: Kept['besides'];
}

function terminalAt({ machine, stages }: History, terminal: string, live: boolean): Terminal {
  const { state } = stages.at(-1)!;
  const reach = reachOf(machine, state, terminal);
  const hops = live && reach ? [...reach.hops].reverse().map(turned) : [];
  const { stoppedBy, besides } = live ? { stoppedBy: [], besides: [] } : keptDead(machine, state, terminal);
  return { terminal, reach, trace: { load: '', fed: live, path: hops, stoppedBy: [...stoppedBy] }, besides };
}

function said(history: History, { terminal, reach, trace, besides }: Terminal): ExplainingSaid {
  const { state } = history.stages.at(-1)!;
  if (trace.fed && reach) {
    const { pole, loads } = reach;
    const joined = { terminal, pole, by: waySaid(history, trace.path, state) };
    return loads.length > 0 ? { says: 'liveThrough', ...joined, loads } : { says: 'live', ...joined };
  }
  if (trace.stoppedBy.length > 0)
    return {
      says: 'deadOpen',
      terminal,
      open: placesOpen(history, trace.stoppedBy, state),
      ...openToo(history, besides, state),
    };
  return reach ? { says: 'deadReturn', terminal, pole: reach.pole } : { says: 'deadAlone', terminal };
}

function brief({ terminal, reach, trace }: Terminal): ExplainingSaid {
  if (trace.fed && reach) return { says: 'liveFrom', terminal, pole: reach.pole };
  if (trace.stoppedBy.length === 0)
    return reach ? { says: 'deadReturn', terminal, pole: reach.pole } : { says: 'deadAlone', terminal };
  const open = trace.stoppedBy.map((blocker) => ({ says: 'open', contact: hopOf(blocker) }) as const);
  return { says: 'deadOpen', terminal, open };
}

/** One terminal: the pole it is joined to, or what is open between. */
function decisionOn(history: History, terminal: string): Decision {
  const last = history.stages.at(-1)!;
  const live = liveState(history.standpoint(last.after), terminal) === 'live';
  const found = terminalAt(history, terminal, live);
  return {
    item: terminal,
    ...stepOf(said(history, found), [terminal], [found.trace]),
    brief: brief(found),
    behind: behind(history, last.after, { traces: [found.trace] }),
  };
}

export function explainLive({ circuit, scenario, asked }: QuestionOf<'still-live'>): Explanation {
  const history = historyOf(circuit, scenario);
  const { machine, stages } = history;
  const last = stages.at(-1)!;
  // Relays matter here as far as their contacts lie between a terminal and a supply.
  const between = asked.flatMap((terminal) =>
    [true, false].flatMap((live) => mechanismsOn(history, terminalAt(history, terminal, live).trace)),
  );
  const coils = machine.plan.loads.flatMap(({ id, mechanism }) => (between.includes(mechanism) ? [id] : []));
  const relevant = relevantTo(
    history,
    coils.map((load) => ({ load, after: last.after })),
  );
  const onSite = { says: 'onSite' } as const;
  return {
    decides: [
      ...asked.map((terminal) => decisionOn(history, terminal)),
      { said: onSite, brief: onSite, about: [], behind: [] },
    ],
    story: storyOf(history, relevant),
  };
}

export function hintLive({ circuit, scenario }: QuestionOf<'still-live'>): HintSaid {
  const opened = scenario.acts.findLast(({ kind }) => kind === 'open');
  const supplies = circuit.supplies.map(({ name }) => name);
  return opened && 'device' in opened
    ? { says: 'bothSidesFirst', device: opened.device, supplies }
    : { says: 'eachTerminal', supplies };
}
