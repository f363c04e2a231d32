/** What the memory costs: a review, choosing the next skill, replaying a history, making a plan. */
import { performance } from 'node:perf_hooks';
import type { Recall, SkillAnswer } from '../../shared/memory.ts';
import {
  checkSkills,
  choose,
  newRecall,
  planTowards,
  replay,
  type SkillGraph,
} from '../../src/memory/index.ts';
import { reviewAs } from '../memory/arbitraries.ts';
import { told } from '../support/in-english.ts';

export interface Row {
  readonly name: string;
  readonly median: number;
  readonly unit: string;
}

const DAY = 86_400_000;
const START = 1_760_000_000_000;

/** `length` skills, each on the one `width` before it. */
function chain(length: number, width: number): SkillGraph {
  const checked = checkSkills(
    Array.from({ length }, (_, at) => ({
      id: `s${at}`,
      title: `Skill ${at}`,
      needs: at < width ? [] : [`s${at - width}`],
    })),
  );
  if (!checked.ok) throw new Error('A chain has no circle.');
  return checked.value;
}

function median(runs: number, once: () => void): number {
  const times = Array.from({ length: runs }, () => {
    const from = performance.now();
    once();
    return performance.now() - from;
  }).sort((one, other) => one - other);
  return times[runs >> 1]!;
}

export function memoryRows(): readonly Row[] {
  const reviews = 10_000;
  const history: readonly SkillAnswer[] = Array.from({ length: reviews }, (_, at) => ({
    id: `a${at}`,
    skill: `s${at % 40}`,
    circuit: `c${at}`,
    at: START + at * 3_600_000,
    attempt: {
      share: at % 9 === 0 ? 0.5 : 1,
      help: { hint: at % 7 === 0, explanation: false },
      secondsUsed: 20,
      secondsExpected: 30,
    },
  }));
  const graph = chain(40, 4);
  const recalls = replay(history);
  const now = START + reviews * 3_600_000 + 3 * DAY;
  const plan = (skills: number, days: number) => (): void => {
    const made = planTowards({
      graph: chain(skills, 4),
      recalls: new Map(),
      at: START,
      wishes: { assessmentAt: START + days * DAY, minutesADay: 10, secondsPerQuestion: 30 },
    });
    if (!made.ok) throw new Error(told(made.problems)[0]!.message);
  };
  const reviewing = median(15, () => {
    let recall: Recall = newRecall();
    for (let at = 0; at < reviews; at++)
      recall = reviewAs(recall, at % 9 === 0 ? 'lost' : 'firm', START + at * DAY, `c${at}`);
  });
  const choosing = median(15, () => {
    for (let seed = 0; seed < 100; seed++) choose({ graph, recalls, at: now, recent: ['s1', 's2'], seed });
  });
  return [
    { name: 'memory: one review', median: (reviewing / reviews) * 1000, unit: 'us' },
    { name: 'memory: choosing among 40 skills', median: (choosing / 100) * 1000, unit: 'us' },
    { name: 'memory: replaying 10,000 answers', median: median(15, () => replay(history)), unit: 'ms' },
    { name: 'memory: plan for 24 skills and 28 days', median: median(9, plan(24, 28)), unit: 'ms' },
    { name: 'memory: plan for 100 skills and 120 days', median: median(3, plan(100, 120)), unit: 'ms' },
  ];
}
