import type { Circuit } from '../../../../shared/circuit.ts';
import type { QuestionOf } from '../../../../shared/question.ts';
import { deviceOf, hasCoil } from '../../../circuit/index.ts';
import { hasTimers } from '../../ask/situation.ts';
import { independent } from '../../choosing.ts';
import { itemKind, stateOf } from '../../items.ts';
import type { Kind } from '../../kind.ts';
import { luckWithCourse } from '../../luck.ts';
import type { Standpoint } from '../../solving.ts';
import { statesKind } from '../../states-kind.ts';

type Asked = QuestionOf<'sequence'>['asked'];

const FEWEST_ACTS = 2;
/** Items followed through the sequence, and how many states are asked in all. */
const MOST_ITEMS = 3;
const MOST_ASKED = 12;

/** Share let through in which no relay has to do with what is followed most. */
const STRAIGHT_SHARE = 0.05;
/** Share let through in which it stands alike at every moment asked about. */
const STILL_SHARE = 0.15;

/** Whether it is a relay, or hangs on a relay's contact. */
const overRelay = (circuit: Circuit, item: string): boolean =>
  circuit.paths.some(
    ({ steps }) =>
      steps.some(({ device, enter }) => device === item || `${device}:${enter}` === item) &&
      steps.some(({ device }) => {
        const found = deviceOf(circuit, device);
        return found !== undefined && hasCoil(found);
      }),
  );

/** How do lamps, inputs and relays stand after each of several acts? */
export const sequence: Kind<'sequence'> = {
  ...statesKind('sequence', {
    task: ({ circuit }) => ({ says: 'task', timers: hasTimers(circuit) }),
    how: () => ({ says: 'how' }),
  }),
  luck: ({ asked }) => luckWithCourse(asked.length),
  asksCourse: true,
  suits: ({ scenario }) => scenario.acts.length >= FEWEST_ACTS,
  counted: ({ asked }) => new Set(asked.map(({ item }) => item)),
  propose({ circuit, scenario, family, lamps, inputs, relays }, random, { solve }) {
    const count = scenario.acts.length;
    if (count < FEWEST_ACTS) return undefined;
    const standpoints: Standpoint[] = [];
    for (let after = 0; after <= count; after++) {
      const standpoint = solve(circuit, { ...scenario, acts: scenario.acts.slice(0, after) });
      if (!standpoint) return undefined;
      standpoints.push(standpoint);
    }
    const there = [...new Set([...lamps, ...inputs, ...relays])].filter((item) => itemKind(circuit, item));
    const items = independent(circuit, there, random);
    const first = Math.max(1, count - MOST_ASKED + 1);
    const changes = (item: string, from = first - 1): number => {
      const course = standpoints.slice(from).map((standpoint) => stateOf(standpoint, item));
      return course.filter((state, index) => index > 0 && state !== course[index - 1]).length;
    };
    const changesInTime = (item: string): boolean =>
      scenario.acts.some(
        ({ kind }, act) =>
          kind === 'wait' &&
          act + 1 >= first &&
          stateOf(standpoints[act]!, item) !== stateOf(standpoints[act + 1]!, item),
      );
    // What changes on the way is worth following; one that doesn't may be among them.
    const moving = random.shuffle(items.filter((item) => changes(item) > 0));
    // Where a time runs, what it changes is what has to be followed.
    const [most] = moving.toSorted(
      (a, b) =>
        Number(changesInTime(b)) - Number(changesInTime(a)) ||
        Number(overRelay(circuit, b)) - Number(overRelay(circuit, a)) ||
        changes(b, first) - changes(a, first) ||
        changes(b) - changes(a),
    );
    if (most === undefined) return undefined;
    // What a button or a contact in the field does to its own lamp alone is no question of relays.
    if (!overRelay(circuit, most) && !random.chance(STRAIGHT_SHARE)) return undefined;
    // Nor is it one of a course where all stands still from the first answer to the last.
    if (changes(most, first) === 0 && !random.chance(STILL_SHARE)) return undefined;
    const number = Math.max(1, Math.min(MOST_ITEMS, Math.floor(MOST_ASKED / (count - first + 1))));
    const still = random.chance(0.3)
      ? random.sample(
          items.filter((item) => changes(item) === 0),
          1,
        )
      : [];
    const others = [...still, ...moving.filter((item) => item !== most)];
    const chosen = new Set([most, ...others.slice(0, number - 1)]);
    const asked: Asked = [];
    for (let after = first; after <= count; after++)
      for (const item of items) if (chosen.has(item)) asked.push({ after, item });
    return { kind: 'sequence', circuit, scenario, family, asked };
  },
};
