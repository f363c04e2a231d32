/**
 * Marks as earlier versions kept them: with the explanation, and what was answered and right as English text. What they say
 * is read out of the text, so that they become marks of today.
 */

import type { AnswerLine } from '../../shared/practice.ts';

interface OlderPart {
  readonly item: string;
  readonly given?: unknown;
  readonly right?: unknown;
}

const READING = /^(-?\d+(?:\.\d+)?) V$/;
const PAIR = /^(\S+) and (\S+)$/;
const CHOICE = /^choice (\d+)$/;
/** As long as the name of an answer may be: what somebody wrote in letters alone may be longer. */
const STATE = /^[a-z01]{1,40}$/;

/** What an earlier version wrote for something answered to an item, as data. */
function dataIn(item: string, text: string): object {
  if (item === 'volts') {
    const [, volts] = READING.exec(text) ?? [];
    if (volts !== undefined) return { says: 'volts', volts: Number(volts) };
    return { says: text === 'nothing' ? 'nothing' : 'noNumber' };
  }
  if (item === 'choice') {
    const [, first, second] = PAIR.exec(text) ?? [];
    if (first !== undefined && second !== undefined) return { says: 'pair', first, second };
    const [, number] = CHOICE.exec(text) ?? [];
    return number === undefined ? { says: 'written', text } : { says: 'choice', number: Number(number) };
  }
  return STATE.test(text) ? { says: text } : { says: 'written', text };
}

const isObject = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

function partOfToday(part: unknown): unknown {
  if (!isObject(part) || typeof part['item'] !== 'string') return part;
  const { item, given, right } = part as unknown as OlderPart;
  return {
    ...part,
    ...(typeof given === 'string' ? { given: dataIn(item, given) } : {}),
    ...(typeof right === 'string' ? { right: dataIn(item, right) } : {}),
  };
}

const idOf = (idea: unknown): unknown => (isObject(idea) && 'id' in idea ? idea['id'] : idea);

/** A mark of an earlier version as one of today; anything else stays what it is. */
export function markOfToday(value: unknown): unknown {
  if (!isObject(value) || !('explanation' in value)) return value;
  const { explanation: _, problems: __, parts, misconceptions, ...rest } = value;
  return {
    ...rest,
    parts: Array.isArray(parts) ? parts.map(partOfToday) : parts,
    misconceptions: Array.isArray(misconceptions) ? misconceptions.map(idOf) : misconceptions,
  };
}

/** The same of what holds a mark in a field of that name. */
export const withMarkOfToday = (value: unknown): unknown =>
  isObject(value) && 'mark' in value ? { ...value, mark: markOfToday(value['mark']) } : value;

/** A line of an earlier version, which held its idea in words, as one of today. */
export const lineOfToday = (line: AnswerLine): AnswerLine => ({
  ...line,
  idea: line.idea === null ? null : (idOf(line.idea) as string),
});
