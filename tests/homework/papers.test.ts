import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Paper, paper as paperSchema, publicPaper as publicSchema } from '../../shared/homework.ts';
import { canonicalForm } from '../../src/generator/index.ts';
import {
  joinPapers,
  paperAgain,
  paperFor,
  papersFor,
  publicPaper,
  takenBy,
  toleranceOf,
} from '../../src/homework/index.ts';
import { rightAnswer } from '../../src/questions/index.ts';
import { english } from '../../src/words/en/core.ts';
import { told } from '../support/in-english.ts';
import { course, places, seats, setOf } from './course.ts';

const ALL = [...course.skills.keys()];
const whole = setOf(places(ALL, 10));

function papersOf(set = whole, count = 6, attempt = 1): readonly Paper[] {
  const made = papersFor(set, seats(count, attempt));
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value;
}

const values = (of: unknown): unknown[] =>
  typeof of === 'object' && of !== null ? Object.values(of).flatMap(values) : [of];
const keys = (of: unknown): string[] =>
  Array.isArray(of)
    ? of.flatMap(keys)
    : typeof of === 'object' && of !== null
      ? Object.entries(of).flatMap(([key, value]) => [key, ...keys(value)])
      : [];

describe('a paper', () => {
  it('has in each place the skill, kind, marks and difficulty of the set', () => {
    for (const paper of papersOf()) {
      expect(paperSchema.safeParse(paper).success).toBe(true);
      expect(paper.items.map(({ skill, question, marks }) => [skill, question.kind, marks])).toEqual(
        whole.places.map(({ skill, kind, marks }) => [skill, kind, marks]),
      );
      for (const [index, { difficulty, question }] of paper.items.entries()) {
        const place = whole.places[index]!;
        expect(place.families).toContain(question.family);
        expect(Math.abs(difficulty - place.difficulty)).toBeLessThanOrEqual(toleranceOf(place.difficulty));
      }
    }
  });

  it('is the same again from the same seed, and from the draws that are kept with it', () => {
    const [seat] = seats(1);
    const first = paperFor(whole, seat!);
    expect(paperFor(whole, seat!)).toEqual(first);
    if (!first.ok) throw new Error('no paper');
    const draws = first.value.items.map(({ draw }) => draw);
    expect(paperAgain(whole, seat!, draws)).toEqual(first.value);
  });

  it('comes again from its draws even where somebody else had the first candidates', () => {
    const papers = papersOf(whole, 3);
    const noted = takenBy(papers);
    const [, , , seat] = seats(4);
    // Everything of the fourth learner's first candidates is taken as well.
    const free = paperFor(whole, seat!, noted.taken);
    if (!free.ok) throw new Error('no paper');
    noted.add(free.value);
    const pushed = paperFor(whole, seat!, noted.taken);
    if (!pushed.ok) throw new Error('no paper');
    for (const [index, item] of pushed.value.items.entries())
      expect(item.draw).toBeGreaterThan(free.value.items[index]!.draw);
    expect(
      paperAgain(
        whole,
        seat!,
        pushed.value.items.map(({ draw }) => draw),
      ),
    ).toEqual(pushed.value);
  });

  it('differs for another learner and for another attempt in every place', () => {
    const [one, other] = papersOf(whole, 2);
    const again = papersFor(whole, seats(1, 2));
    if (!again.ok) throw new Error('no paper');
    for (const [index, { circuit }] of one!.items.entries()) {
      expect(circuit).not.toBe(other!.items[index]!.circuit);
      expect(circuit).not.toBe(again.value[0]!.items[index]!.circuit);
    }
  });

  it('is the same whether the class was made in one go or in parts, but where circuits clash', () => {
    const set = setOf(places(['make-contact', 'status-lamps'], 3));
    const all = seats(8);
    const apart = all.flatMap((seat) => {
      const made = paperFor(set, seat);
      return made.ok ? [made.value] : [];
    });
    const whole_ = papersFor(set, all);
    if (!whole_.ok) throw new Error('no papers');
    expect(joinPapers(set, all, apart)).toEqual(whole_);
    // The last learner got the first one's paper by mischance: only that paper changes.
    const clash = [...apart.slice(0, 7), { ...apart[0]!, learner: all[7]!.learner }];
    const joined = joinPapers(set, all, clash);
    if (!joined.ok) throw new Error('no papers');
    expect(joined.value.slice(0, 7)).toEqual(apart.slice(0, 7));
    for (const [place, { circuit }] of joined.value[7]!.items.entries())
      expect(joined.value.slice(0, 7).map(({ items }) => items[place]!.circuit)).not.toContain(circuit);
  });

  it('has no circuit twice', () => {
    const set = setOf(places(['make-contact'], 8));
    for (const { items } of papersOf(set, 4))
      expect(new Set(items.map(({ circuit }) => circuit)).size).toBe(items.length);
  });

  it('is refused with the place where too few circuits are left', () => {
    const made = paperFor(whole, seats(1)[0]!, (place) => place === 3);
    expect(made).toMatchObject({ ok: false, problems: [{ code: 'homework-too-few-circuits' }] });
    if (!made.ok) expect(told(made.problems)[0]!.message).toContain('Place 4');
  });

  it('is refused with the place where no question of that difficulty comes about', () => {
    const set = setOf(whole.places.slice(0, 1).map((place) => ({ ...place, difficulty: 60 })));
    expect(paperFor(set, seats(1)[0]!)).toMatchObject({
      ok: false,
      problems: [{ code: 'homework-no-question' }],
    });
  });
});

describe('a thousand papers', () => {
  const set = setOf(places(['make-contact', 'status-lamps'], 2));
  const papers = papersOf(set, 1000);

  it('hold the tolerance in every place, with nearly the same mean for every tenth of the class', () => {
    for (const [index, { difficulty }] of set.places.entries()) {
      const found = papers.map(({ items }) => items[index]!.difficulty);
      const tolerance = toleranceOf(difficulty);
      expect(Math.max(...found.map((each) => Math.abs(each - difficulty)))).toBeLessThanOrEqual(tolerance);
      const mean = (list: readonly number[]): number =>
        list.reduce((sum, value) => sum + value, 0) / list.length;
      for (let tenth = 0; tenth < 10; tenth++)
        expect(Math.abs(mean(found.slice(tenth * 100, tenth * 100 + 100)) - mean(found))).toBeLessThan(
          tolerance / 3,
        );
    }
  });

  it('have no circuit twice in a place, by the canonical form itself and not only its digest', () => {
    for (const index of set.places.keys()) {
      expect(new Set(papers.map(({ items }) => items[index]!.circuit)).size).toBe(1000);
      const sample = papers.slice(0, 200).map(({ items }) => canonicalForm(items[index]!.question.circuit));
      expect(new Set(sample).size).toBe(200);
    }
  });
});

describe('a paper before submission', () => {
  const papers = papersOf(whole, 8);

  it('has nothing of how it was made', () => {
    for (const [index, paper] of papers.entries()) {
      const sent = publicPaper(english, whole, paper);
      expect(publicSchema.safeParse(sent).success).toBe(true);
      const text = JSON.stringify(sent);
      expect(text).not.toContain(seats(8)[index]!.seed);
      const shown = new Set(keys(sent));
      for (const secret of ['seed', 'family', 'draw', 'difficulty', 'right', 'wanted', 'answer'])
        expect([...shown]).not.toContain(secret);
      for (const { question, circuit } of paper.items) {
        expect(values(sent)).not.toContain(question.family);
        expect(text).not.toContain(circuit);
        expect(text).not.toContain(question.seed);
      }
    }
  });

  it('has no right answer in it', () => {
    for (const paper of papers)
      for (const [index, { question }] of paper.items.entries()) {
        const text = JSON.stringify(publicPaper(english, whole, paper).items[index]);
        expect(text).not.toContain(JSON.stringify(rightAnswer(question)));
        const answer = rightAnswer(question);
        if ('states' in answer) expect(text).not.toContain(JSON.stringify(answer.states));
      }
  });

  it('is the same whatever the question keeps to itself', () => {
    fc.assert(
      fc.property(
        fc.nat(papers.length - 1),
        fc.string({ maxLength: 60 }),
        fc.nat(99),
        (index, text, number) => {
          const paper = papers[index]!;
          const changed: Paper = {
            ...paper,
            learner: 'somebody-else',
            items: paper.items.map((item) => ({
              ...item,
              draw: number,
              difficulty: number,
              circuit: `c${text}`,
              secondsExpected: number + 1,
              question: { ...item.question, seed: text, family: text },
            })),
          };
          expect(publicPaper(english, whole, changed)).toEqual(publicPaper(english, whole, paper));
        },
      ),
      { numRuns: 20 },
    );
  });

  it('offers the choices of a wiring question in no order that tells the right one', () => {
    const wiring = places(['status-lamps'], 3).filter(({ kind }) => kind === 'wiring');
    const right = papersOf(setOf(wiring), 40).flatMap(({ items }) =>
      items.map(({ question }) => {
        const answer = rightAnswer(question);
        return answer.kind === 'wiring' ? answer.choice : -1;
      }),
    );
    const counts = new Map<number | undefined, number>();
    for (const choice of right) counts.set(choice, (counts.get(choice) ?? 0) + 1);
    expect(counts.size).toBeGreaterThan(2);
    // Of forty with at least three choices, any one place holding more than two thirds would be a pattern.
    expect(Math.max(...counts.values())).toBeLessThan(27);
  });
});
