import { describe, expect, it } from 'vitest';
import type { Question } from '../../shared/question.ts';
import { answerOf } from '../../src/web/screens/practise/answer.ts';
import {
  conductorsLaid,
  openStep,
  stepsAsked,
  touchableOf,
  wire,
} from '../../src/web/screens/practise/on-drawing.ts';
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
    new Map([...chosen, ...wire(question, asked, chosen, terminal)]);
  const open = (chosen: ReadonlyMap<string, string>): string[] => [
    ...touchableOf(question, asked, chosen, '', undefined).keys(),
  ];

  it.each(question.choices.map((pair, choice) => [pair.join(' and '), pair, choice] as const))(
    'is answered by touching %s, in whichever order',
    (_, [first, second], choice) => {
      for (const [one, other] of [
        [first, second],
        [second, first],
      ] as const) {
        const half = touch(new Map(), one);
        expect(answerOf(question, asked, half)).toBeUndefined();
        expect(conductorsLaid(question, asked, half)).toEqual([[question.ends[0], one]]);
        expect(open(half)).toContain(other);
        const whole = touch(half, other);
        expect(answerOf(question, asked, whole)).toEqual({ kind: 'wiring', choice });
        expect(conductorsLaid(question, asked, whole)).toEqual([
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
    expect(conductorsLaid(question, asked, touch(half, first))).toEqual([]);
    const anew = touch(touch(half, second), second);
    expect(answerOf(question, asked, anew)).toBeUndefined();
    expect(conductorsLaid(question, asked, anew)).toEqual([[question.ends[0], second]]);
  });

  it('shows what the form has chosen', () => {
    const chosen = new Map([['choice', asked.items[0]!.values[1]!]]);
    expect(conductorsLaid(question, asked, chosen).map(([, terminal]) => terminal)).toEqual(
      question.choices[1],
    );
  });
});

describe('a sequence on its drawing', () => {
  const question = questionOf('sequence');
  const asked = askQuestion(question);

  it('is answered moment by moment: each has the places that are asked then', () => {
    const steps = stepsAsked(asked);
    expect(steps.size).toBeGreaterThan(1);
    const items = [...steps.values()].flat().map(({ item }) => item.item);
    expect(items.toSorted()).toEqual(asked.items.map(({ item }) => item).toSorted());
    for (const [after, entries] of steps)
      expect([...touchableOf(question, asked, new Map(), after, undefined).keys()]).toEqual(
        entries.map(({ place }) => place),
      );
  });

  it('goes on to the first moment that is not answered whole', () => {
    const steps = [...stepsAsked(asked)];
    const chosen = new Map<string, string>();
    for (const [after, entries] of steps) {
      expect(openStep(asked, chosen)).toBe(after);
      for (const { item } of entries) chosen.set(item.item, item.values[0]!);
    }
    expect(openStep(asked, chosen)).toBe(steps.at(-1)![0]);
    expect(answerOf(question, asked, chosen)).toBeDefined();
  });
});

it('a meter has nothing to touch: it is answered with a number', () => {
  const question = questionOf('meter');
  expect(touchableOf(question, askQuestion(question), new Map(), '', undefined).size).toBe(0);
});
