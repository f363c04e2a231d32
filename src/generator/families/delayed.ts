/** Timers that follow a signal, the common part of the on-delay and the off-delay family. */

import type { Act } from '../../../shared/scenario.ts';
import { severalLists } from '../act-lists.ts';
import { numbered, titleOf } from '../casting.ts';
import { addLamp, type addOnDelay, addRelay, addSensor } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { CoilPart, Toggle } from '../parts.ts';
import type { Random } from '../random.ts';
import { pickSeconds } from '../timing.ts';
import type { Draft } from '../types.ts';
import { type Delayed, type Meaning, nextStep, type Plant, type Sensor } from '../vocabulary/index.ts';

export interface TimedSignal {
  readonly seconds: number;
  readonly toggle: Toggle;
  /** The supply is lost and comes back. */
  readonly loss: readonly Act[];
}

interface Kind {
  readonly family: string;
  readonly addTimer: typeof addOnDelay;
  readonly entries: (plant: Plant) => readonly Delayed[];
  readonly subject: string;
  /** One list of acts around one of the timers. */
  readonly acts: (random: Random, timed: TimedSignal, others: readonly TimedSignal[]) => Act[];
}

/** What it means elsewhere on the plant's drawings, where it is one of its signals. */
const meaningOf = ({ signals }: Plant, text: string): Meaning =>
  signals.flatMap(({ acted, rest }) => [acted, rest]).find((word) => word.text === text)?.meaning ??
  'neutral';

/** What reports it there: one of its signals, or a limit of a movement. */
function sensorOf({ signals, movements }: Plant, text: string): Sensor {
  if (movements.some(({ ways }) => ways.some(({ there }) => there === text))) return 'limit';
  const signal = signals.find(({ acted, rest }) => [acted, rest].some((word) => word.text === text));
  return signal?.sensor ?? 'contact';
}

/**
 * One timer at sizes 1 and 2, two to three beyond; from size 2 a relay follows the timer, from size 4 a signal starts two
 * timers one after the other.
 */
export function delayedDraft(
  random: Random,
  size: number,
  { family, addTimer, entries, subject, acts }: Kind,
): Draft {
  const opening = open(random);
  const { plant, board, source } = opening;
  const count = size <= 2 ? 1 : size <= 5 ? 2 : 3;
  const chosen = random.sample(entries(plant), count);
  const number = random.int(1, 6);
  const [first] = chosen;
  const loss: readonly Act[] = [
    { kind: 'open', device: source.protection },
    { kind: 'close', device: source.protection },
  ];
  let before: CoilPart['made'] | undefined;
  const timed = chosen.map((own, index): TimedSignal => {
    const chained = size >= 4 && before !== undefined && index === 1;
    const entry = chained ? nextStep : own;
    const seconds = pickSeconds(random);
    const full = (word: string): string => numbered(word, number);
    const makes = random.chance(0.7);
    const text = full(makes ? entry.signal : entry.without);
    const late = full(entry.late.text);
    const sensor = addSensor(board, sensorOf(plant, entry.signal), text);
    const timer = addTimer(board, source, seconds, { poles: 2, text: late });
    const contacts = [makes ? sensor.made() : sensor.rest()];
    if (chained) contacts.push(before!());
    if (timer.supply) board.line(source, 'control', [timer.supply]);
    board.line(source, 'control', [...random.shuffle(contacts), timer.coil]);
    let follower: CoilPart = timer;
    // A relay on the timer's break contact is at rest once the time is over, and its other leg says so.
    let straight = true;
    if (size >= 2 && (index === 0 || size >= 5)) {
      follower = addRelay(board, source, { poles: 4 });
      straight = random.chance(0.6);
      board.line(source, 'control', [straight ? timer.made() : timer.rest(), follower.coil]);
    }
    const pole = follower.pole();
    const delayed = addLamp(board, source, late, entry.late.meaning);
    board.line(source, 'lamps', [straight ? pole.made : pole.rest, delayed.hop]);
    if (size > 1 || random.chance(0.6)) {
      const idle = addLamp(board, source, full(entry.idle), 'neutral');
      board.tail([straight ? pole.rest : pole.made, idle.hop]);
    }
    if (size >= 3 && random.chance(0.6)) {
      const signal = addLamp(board, source, text, meaningOf(plant, makes ? entry.signal : entry.without));
      board.line(source, 'lamps', [sensor.made(), signal.hop]);
    }
    before = straight ? follower.made : follower.rest;
    return { seconds, toggle: sensor.toggle, loss };
  });
  maybeSupplyLamp(random, opening, size === 1 ? 0.6 : 0.25);
  return finish(random, board, {
    family,
    title: titleOf(plant, numbered(first!.thing, number), subject),
    sheets: sheetsFor(random, size),
    acts: severalLists(4, () => {
      const mixed = random.shuffle(timed);
      return acts(random, mixed[0]!, mixed.slice(1));
    }),
  });
}
