import type { HintSaid } from '../../words/index.ts';
import { byMoments, type Entry, entriesOf, momentAt, type StatesQuestion } from '../entries.ts';
import type { Decision, Explanation } from '../said.ts';
import { behind } from './behind.ts';
import { type History, historyOf, relevantTo } from './history.ts';
import { loadStands, loadsOf, relayStands, type Stands } from './standing.ts';
import { storyOf } from './story.ts';

/** Gone through as far as anything is asked, with the mechanisms that what is asked hangs on. */
function goneThrough(question: StatesQuestion): {
  entries: readonly Entry[];
  history: History;
  relevant: ReadonlySet<number>;
} {
  const { circuit, scenario } = question;
  const entries = entriesOf(question);
  const last = Math.max(...entries.map(({ after }) => after));
  const history = historyOf(circuit, { ...scenario, acts: scenario.acts.slice(0, last) });
  const asked = entries.flatMap(({ item, after }) => loadsOf(history, item).map((load) => ({ load, after })));
  return { entries, history, relevant: relevantTo(history, asked) };
}

/**
 * Why one thing asked stands as it stands.
 *
 * @param moments - whether more than the end is asked about, so that each is told with its moment
 * @param moment - what that is called; by itself the number of acts
 */
export function decisionOf(
  history: History,
  { key, item, kind, after }: Pick<Entry, 'key' | 'item' | 'kind' | 'after'>,
  moments: boolean,
  moment = String(after),
): Decision & Pick<Stands, 'said'> {
  const thing = moments ? { item, after } : { item };
  const isRelay = kind === 'relay';
  const { said, about, brief, traces } = (isRelay ? relayStands : loadStands)(history, after, thing);
  return {
    item: key,
    said,
    about,
    brief,
    ...(isRelay ? { of: { relay: item, moment } } : {}),
    behind: behind(history, after, { traces, moment, ...(isRelay ? { asked: item } : {}) }),
  };
}

export function explainStates(question: StatesQuestion): Explanation {
  const { entries, history, relevant } = goneThrough(question);
  return {
    decides: entries.map((entry) => decisionOf(history, entry, byMoments(question))),
    story: storyOf(history, relevant),
  };
}

/** The first thing to look at: the relay that everything asked first hangs on, or the path itself. */
export function hintStates(question: StatesQuestion): HintSaid {
  const { entries, history, relevant } = goneThrough(question);
  const [first] = entries;
  const relays = [...relevant]
    .map((mechanism) => history.machine.plan.mechanisms[mechanism]!)
    .filter(({ drive }) => drive !== 'act' && drive !== 'feed')
    .map(({ device }) => device);
  const moved = storyOf(history, relevant).flatMap(({ about }) => about);
  const earliest = moved.find((name) => relays.includes(name)) ?? relays[0];
  if (earliest === undefined) return { says: 'followPath', item: first!.item };
  const { machine, stages } = history;
  const held = machine.plan.mechanisms.some(
    ({ device }, mechanism) => device === earliest && stages[first!.after]!.state.held[mechanism] === 1,
  );
  const moment = momentAt(question, first!.after);
  // Its coil would lead astray.
  return { says: held ? 'beginWithHeld' : 'beginWith', device: earliest, moment };
}
