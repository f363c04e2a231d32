/** Words that people write for a state, besides its own name. */
import { type ItemKind, STATES } from '../items.ts';

/** In the order of `STATES`. */
const ALSO: Readonly<Record<ItemKind, readonly (readonly string[])[]>> = {
  lamp: [
    ['on', '1', 'yes', 'y', 'true', 'bright', 'light', 'lights', 'glows', 'illuminated'],
    ['off', '0', 'no', 'n', 'false', 'out', 'unlit', 'extinguished'],
    ['half', 'weak', 'dimmed', 'faint'],
    ['flash', 'flashes', 'blinks', 'blinking', 'blink'],
  ],
  load: [
    ['1', 'yes', 'y', 'true', 'lit', 'runs', 'running', 'open', 'sounds'],
    ['0', 'no', 'n', 'false', 'dark', 'stopped', 'silent', 'out'],
    ['dim', 'half'],
    ['pulses', 'flashing', 'intermittent'],
  ],
  input: [
    ['on', 'high', 'yes', 'y', 'true', 'one', 'h'],
    ['off', 'low', 'no', 'n', 'false', 'zero', 'l'],
    ['between', 'unclear', 'indefinite'],
    ['changes', 'flashing', 'toggling'],
  ],
  relay: [
    [
      '1',
      'on',
      'yes',
      'y',
      'true',
      'energised',
      'energized',
      'up',
      'in',
      'picked',
      'pulled',
      'operates',
      'made',
    ],
    [
      '0',
      'off',
      'no',
      'n',
      'false',
      'released',
      'de-energised',
      'de-energized',
      'down',
      'dropped',
      'resting',
    ],
    ['changes', 'flashing', 'switching'],
  ],
  terminal: [
    ['1', 'on', 'yes', 'y', 'true', 'hot', 'energised', 'energized'],
    ['0', 'off', 'no', 'n', 'false', 'safe', 'de-energised', 'de-energized'],
  ],
};

const tables = new Map(
  (Object.keys(STATES) as ItemKind[]).map((kind) => [
    kind,
    new Map(
      STATES[kind].flatMap((state, index) =>
        [state, ...ALSO[kind][index]!].map((word) => [word, state] as const),
      ),
    ),
  ]),
);

/** The state that a word means for an item of this kind; undefined when it means none. */
export const stateWord = (kind: ItemKind, word: string): string | undefined =>
  tables.get(kind)!.get(word.trim().toLowerCase());
