import { describe, expect, it } from 'vitest';
import type { Question } from '../../shared/question.ts';
import { answerOf } from '../../src/web/question/answer.ts';
import {
  askedAt,
  conductorsLaid,
  momentsAsked,
  openMoment,
  touchableOf,
  touched,
} from '../../src/web/question/on-drawing.ts';
import { everyKind } from '../browser/support/every-kind.ts';
import { askQuestion } from '../support/in-english.ts';

const kinds = everyKind();

function questionOf<K extends Question['kind']>(kind: K): Extract<Question, { kind: K }> {
  const found = [...kinds.values()].find(({ question }) => question.kind === kind)?.question;
  if (found?.kind !== kind) throw new Error(`no question of kind ${kind}`);
  return found as Extract<Question, { kind: K }>;
}

describe('a wiring on its drawing', () => {
  const question = questionOf('wiring');
  const asked = askQuestion(question);
  const touch = (chosen: ReadonlyMap<string, string>, terminal: string): ReadonlyMap<string, string> =>
    new Map([...chosen, ...touched(asked, chosen, terminal, undefined)]);
  const open = (chosen: ReadonlyMap<string, string>): string[] => [
    ...touchableOf(asked, chosen, undefined, undefined).keys(),
  ];

  it.each(question.choices.map((pair, choice) => [pair.join(' and '), pair, choice] as const))(
    'is answered by touching %s, in whichever order',
    (_, [first, second], choice) => {
      for (const [one, other] of [
        [first, second],
        [second, first],
      ] as const) {
        const half = touch(new Map(), one);
        expect(answerOf(question.kind, asked, half)).toBeUndefined();
        expect(conductorsLaid(asked, half)).toEqual([[question.ends[0], one]]);
        expect(open(half)).toContain(other);
        const whole = touch(half, other);
        expect(answerOf(question.kind, asked, whole)).toEqual({ kind: 'wiring', choice });
        expect(conductorsLaid(asked, whole)).toEqual([
          [question.ends[0], first],
          [question.ends[1], second],
        ]);
      }
    },
  );

  it('offers at first every terminal of a choice, and then only those that make one with the first', () => {
    expect(open(new Map()).toSorted()).toEqual([...new Set(question.choices.flat())].toSorted());
    const [first] = question.choices[0]!;
    const partners = question.choices.filter((pair) => pair.includes(first)).flat();
    expect(open(touch(new Map(), first)).toSorted()).toEqual([...new Set(partners)].toSorted());
  });

  it('takes a terminal back that is touched again, and begins anew after both', () => {
    const [first, second] = question.choices[0]!;
    const half = touch(new Map(), first);
    expect(conductorsLaid(asked, touch(half, first))).toEqual([]);
    const anew = touch(touch(half, second), second);
    expect(answerOf(question.kind, asked, anew)).toBeUndefined();
    expect(conductorsLaid(asked, anew)).toEqual([[question.ends[0], second]]);
  });

  it('shows what the form has chosen', () => {
    const chosen = new Map([['choice', asked.items[0]!.values[1]!]]);
    expect(conductorsLaid(asked, chosen).map(([, terminal]) => terminal)).toEqual(question.choices[1]);
  });
});

describe('a sequence on its drawing', () => {
  const question = questionOf('sequence');
  const asked = askQuestion(question);

  it('is answered moment by moment: each has the places that are asked then', () => {
    const moments = momentsAsked(asked);
    expect(moments.length).toBeGreaterThan(1);
    for (const moment of moments) {
      const there = asked.items.filter(({ after }) => after === moment);
      expect(there.length).toBeGreaterThan(0);
      const places = [...touchableOf(asked, new Map(), moment, undefined).keys()];
      expect(places).toEqual(there.map(({ named }) => named!.name));
      for (const [at, place] of places.entries()) expect(askedAt(asked, place, moment)).toBe(there[at]);
    }
  });

  it('turns what is touched at its moment alone', () => {
    const [first, second] = momentsAsked(asked);
    const item = asked.items.find(({ after }) => after === first)!;
    const place = item.named!.name;
    expect(touched(asked, new Map(), place, first)).toEqual([[item.item, item.values[0]]]);
    const all = item.values.reduce<ReadonlyMap<string, string>>(
      (chosen) => new Map([...chosen, ...touched(asked, chosen, place, first)]),
      new Map(),
    );
    expect(all.get(item.item)).toBe(item.values.at(-1));
    expect(touched(asked, all, place, first)).toEqual([[item.item, item.values[0]]]);
    const other = askedAt(asked, place, second);
    expect(touched(asked, all, place, second)).toEqual(other ? [[other.item, other.values[0]]] : []);
    expect(touched(asked, new Map(), '-X99', first)).toEqual([]);
  });

  it('goes on to the first moment that is not answered whole', () => {
    const moments = momentsAsked(asked);
    const chosen = new Map<string, string>();
    for (const moment of moments) {
      expect(openMoment(asked, chosen)).toBe(moment);
      for (const { item, after, values } of asked.items) if (after === moment) chosen.set(item, values[0]!);
    }
    expect(openMoment(asked, chosen)).toBe(moments.at(-1));
    expect(answerOf(question.kind, asked, chosen)).toBeDefined();
  });
});

it('a meter has nothing to touch: it is answered with a number', () => {
  const question = questionOf('meter');
  expect(touchableOf(askQuestion(question), new Map(), undefined, undefined).size).toBe(0);
});
