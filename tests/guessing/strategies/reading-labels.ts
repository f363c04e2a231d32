/**
 * Reads what is written beside things and what is done, and believes it: a lamp that speaks of what has been actuated is lit,
 * unless its words say the opposite. With a memory of what was started and stopped on the way, or without.
 */
import type { AskedItem } from '../../../shared/question.ts';
import type { Act } from '../../../shared/scenario.ts';
import {
  answered,
  type Guess,
  momentOf,
  offOf,
  onOf,
  type Seen,
  type Strategy,
  thingOf,
  wordList,
  wordsOf,
} from '../seen.ts';

const ACTUATES = new Set<Act['kind']>([
  'press',
  'make',
  'break',
  'actuate' as Act['kind'],
  'trip',
  'on',
  'hold',
  'turn',
]);
const UNDOES = new Set<Act['kind']>(['release', 'reset', 'off', 'free']);
/** Words of things that stand as they stand while nothing happens. */
const QUIET = new Set(
  'off stopped out waits not no normal healthy well closed empty clear free stands standing right order correct ok'.split(
    ' ',
  ),
);
const POWER = new Set(['control', 'supply', 'on']);

/** Words that tell one thing from another: its kind and its number. */
const telling = (text: string): Set<string> =>
  new Set(wordList(text).filter((word) => word !== 'on' && word !== 'from'));

const shared = (one: Set<string>, other: Set<string>): number =>
  [...one].filter((word) => other.has(word)).length;

/** Which of the things acted on an item speaks of most, and which act was the last on it. */
function lastActOn(seen: Seen, words: Set<string>, acts: readonly Act[]): Act | undefined {
  let best: Act | undefined;
  let most = 0;
  acts.forEach((act) => {
    if (!('device' in act)) return;
    const alike = shared(words, telling(wordsOf(seen, act.device)));
    if (alike >= most && alike > 0) {
      most = alike;
      best = act;
    }
  });
  return best;
}

/** Whether something has been started and not stopped since, as far as buttons' words tell. */
function running(seen: Seen, acts: readonly Act[]): boolean {
  let runs = false;
  for (const act of acts) {
    const words = 'device' in act ? wordsOf(seen, act.device).toLowerCase() : '';
    if (act.kind === 'fail' || act.kind === 'open' || act.kind === 'trip') runs = false;
    else if (act.kind === 'press' && /^(stop|emergency)/.test(words)) runs = false;
    else if (act.kind === 'press') runs = true;
    else if (act.kind === 'release' && !/^(start|stop|emergency)/.test(words)) runs = false;
  }
  return runs;
}

const guess =
  (remembers: boolean): Guess =>
  (seen) =>
    answered(seen, (item: AskedItem) => {
      const text = wordsOf(seen, thingOf(item));
      const words = telling(text);
      if ([...POWER].every((word) => wordList(text).includes(word))) return onOf(item);
      const acts = seen.scenario.acts.slice(0, momentOf(item, seen.scenario));
      const quiet = wordList(text).some((word) => QUIET.has(word));
      const last = lastActOn(seen, words, acts);
      let up: boolean;
      if (remembers && seen.devices.some(({ kind }) => kind === 'push-button')) up = running(seen, acts);
      else if (last) up = ACTUATES.has(last.kind) && !UNDOES.has(last.kind);
      else up = false;
      return up !== quiet ? onOf(item) : offOf(item);
    });

const isStates = (kind: Seen['kind']): boolean => kind !== 'wiring' && kind !== 'meter';

export const readingLabels: Strategy = {
  id: 'labels',
  learn: (kind) => (isStates(kind) ? guess(false) : undefined),
};

export const remembering: Strategy = {
  id: 'start and stop',
  learn: (kind) => (isStates(kind) ? guess(true) : undefined),
};
