/** What homework costs: papers for a class, marking one, reports, prints. One core; the figures of issue 5 are for two. */

import { performance } from 'node:perf_hooks';
import type { Paper } from '../../shared/homework.ts';
import {
  classReport,
  markPaper,
  paperFor,
  papersFor,
  takenBy,
  termReport,
} from '../../src/homework/index.ts';
import { answerKeyPdf, classPapersPdf } from '../../src/homework/print/index.ts';
import { blankAnswer, rightAnswer } from '../../src/questions/index.ts';
import { english } from '../../src/words/en/core.ts';
import { course, places, seats, setOf } from '../homework/course.ts';
import { codeFor } from '../homework/print/class-to-print.ts';
import { median, type Row } from './row.ts';

const ALL = ['make-contact', 'status-lamps', 'relay-chains', 'controller-inputs', 'seal-in'];

const timed = <T>(work: () => T): { readonly value: T; readonly ms: number } => {
  const from = performance.now();
  const value = work();
  return { value, ms: performance.now() - from };
};

/** A class of 30 with 10 items each, as PDF: the papers, and their key. */
async function printRows(): Promise<readonly Row[]> {
  const set = setOf(places(ALL, 10));
  const all = papersFor(set, seats(30));
  if (!all.ok) throw new Error(JSON.stringify(all.problems));
  const papers = all.value.map((paper, index) => ({ paper, name: paper.learner, code: codeFor(index) }));
  const request = { words: english, set, className: 'Benchmark', papers, made: new Date(0) };
  const from = performance.now();
  await classPapersPdf({ ...request, closes: 'at the end' });
  const between = performance.now();
  await answerKeyPdf(request);
  const end = performance.now();
  const row = (name: string, ms: number): Row => ({
    name: `homework: ${name}`,
    value: ms / 1000,
    unit: 's',
    bound: 15,
    better: 'less',
  });
  return [
    row('PDF of 30 papers of 10 items', between - from),
    row('key to 30 papers of 10 items, as PDF', end - between),
  ];
}

/** Papers of 20 items made one by one, each on circuits that nobody before it has; then marked, reported on and printed. */
export async function bench(papers = 100): Promise<readonly Row[]> {
  const set = setOf(places(ALL, 20));
  const noted = takenBy([]);
  const times: number[] = [];
  const made: Paper[] = [];
  for (const seat of seats(papers)) {
    const { value, ms } = timed(() => paperFor(set, seat, noted.taken));
    if (!value.ok) throw new Error(JSON.stringify(value.problems));
    noted.add(value.value);
    made.push(value.value);
    times.push(ms);
  }
  const marking = made.slice(0, 20).map((paper) => {
    const answers = new Map(
      paper.items.map(({ question }, item) => {
        const answer = item % 3 === 0 ? blankAnswer(question) : rightAnswer(question);
        return [item, { item, answer, at: set.opensAt, secondsUsed: null, hint: false }] as const;
      }),
    );
    return timed(() => markPaper(paper, answers));
  });
  const marks = made.map((paper, index) => ({
    ...marking[index % marking.length]!.value,
    learner: paper.learner,
  }));
  const learners = made.map(({ learner }) => learner);
  const report = Array.from({ length: 5 }, () =>
    timed(() => classReport({ set, course, learners, marks, papers: made })),
  );
  // 300 learners and 20 sets, the marks of those papers over again.
  const many = Array.from({ length: 300 }, (_, index) => ({
    ...marks[index % marks.length]!,
    learner: `l${index}`,
  }));
  const class300 = many.map(({ learner }) => learner);
  const sets = Array.from({ length: 20 }, () => ({ set, marks: many }));
  const term = Array.from({ length: 3 }, () => timed(() => termReport({ course, learners: class300, sets })));
  const one = Array.from({ length: 3 }, () =>
    timed(() => classReport({ set, course, learners: class300, marks: many })),
  );
  const small = setOf(places(['make-contact'], 4));
  const whole = timed(() => papersFor(small, seats(30)));
  const total = times.reduce((sum, ms) => sum + ms, 0);
  return [
    { name: 'homework: a paper of 20 items', value: median(times), unit: 'ms' },
    {
      name: 'homework: 1,000 papers of 20 items, from the mean',
      value: total / times.length,
      unit: 's',
      // On two cores; this is one.
      bound: 120,
      better: 'less',
    },
    {
      name: 'homework: marking a paper of 20 items',
      value: median(marking.map(({ ms }) => ms)),
      unit: 'ms',
    },
    {
      name: `homework: report over ${papers} papers of 20 items`,
      value: median(report.map(({ ms }) => ms)),
      unit: 'ms',
    },
    {
      name: 'homework: report over 300 learners and one set',
      value: median(one.map(({ ms }) => ms)),
      unit: 'ms',
    },
    {
      name: 'homework: report over 300 learners and 20 sets',
      value: median(term.map(({ ms }) => ms)),
      unit: 'ms',
    },
    { name: 'homework: 30 papers of 4 small items', value: whole.ms, unit: 'ms' },
    ...(await printRows()),
  ];
}
