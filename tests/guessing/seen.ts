/**
 * What somebody has who answers without reading the drawing: everything about a question but its conductors. Devices with
 * their symbols and words, what is done, what is asked; not which is joined to which.
 */
import type { Device, Supply } from '../../shared/circuit.ts';
import type { Answer, AskedItem, Question } from '../../shared/question.ts';
import type { Act, Scenario } from '../../shared/scenario.ts';
import { askQuestion } from '../support/in-english.ts';
import type { Sampled } from './sample.ts';

export interface Seen {
  readonly kind: Question['kind'];
  readonly title: string;
  readonly devices: readonly Device[];
  readonly supplies: readonly Supply[];
  readonly scenario: Scenario;
  readonly items: readonly AskedItem[];
  /** The situation in words; what is said there of the drawing itself is seen by anybody. */
  readonly situation: string;
  /** Of a wiring question: its pairs, and what is wanted. */
  readonly choices: readonly (readonly [string, string])[];
  readonly wanted: readonly {
    readonly acts: readonly Act[];
    readonly state: string;
    readonly load: string;
  }[];
  /** Of a meter question. */
  readonly points: readonly [string, string] | undefined;
}

export function seenOf(question: Question): Seen {
  const { circuit, scenario, kind } = question;
  const { items, situation } = askQuestion(question);
  return {
    kind,
    title: circuit.title ?? '',
    devices: circuit.devices,
    supplies: circuit.supplies,
    scenario,
    items,
    situation: situation.join(' '),
    choices: question.kind === 'wiring' ? question.choices : [],
    wanted: question.kind === 'wiring' ? question.wanted : [],
    points: question.kind === 'meter' ? question.points : undefined,
  };
}

/** A sampled question with what is seen of it. */
export interface Case {
  readonly sampled: Sampled;
  readonly seen: Seen;
}

export const caseOf = (sampled: Sampled): Case => ({ sampled, seen: seenOf(sampled.question) });

/** Answers without the drawing. */
export type Guess = (seen: Seen) => Answer;

/** A way to guess. What it learns it learns from other questions than those it is measured on. */
export interface Strategy {
  readonly id: string;
  /** Undefined: it has nothing to say about this kind. */
  learn(kind: Question['kind'], cases: readonly Case[]): Guess | undefined;
}

/** The part of an item's key that names a thing: `-H1` of `2 -H1`. */
export const thingOf = ({ item }: AskedItem): string => item.split(' ').at(-1)!;

/** After how many acts it is asked. */
export const momentOf = ({ after }: AskedItem, { acts }: Scenario): number => after ?? acts.length;

export const deviceNamed = ({ devices }: Pick<Seen, 'devices'>, thing: string): Device | undefined =>
  devices.find(({ name }) => name === thing.split(':')[0]);

/** What is written beside a thing: its own text, or the point's. */
export function wordsOf(seen: Seen, thing: string): string {
  const device = deviceNamed(seen, thing);
  if (!device) return '';
  const point = thing.split(':')[1];
  if (device.kind === 'inputs' && point?.startsWith('I'))
    return device.points?.[Number(point.slice(1)) - 1] ?? '';
  return device.text ?? '';
}

export const wordList = (text: string): string[] => text.toLowerCase().match(/[a-z]+|\d+/g) ?? [];

/** The two states an item mostly has: the one of something energised, lit, live, and the other. */
export const onOf = ({ values }: AskedItem): string => values[0]!;
export const offOf = ({ values }: AskedItem): string => values[1]!;

export const answered = (seen: Seen, stateOf: (item: AskedItem) => string): Answer =>
  ({
    kind: seen.kind,
    states: Object.fromEntries(seen.items.map((item) => [item.item, stateOf(item)])),
  }) as Answer;
