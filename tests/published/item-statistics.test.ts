/** Item statistics against published examples; each names its source. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  alpha,
  correlation,
  discrimination,
  facility,
  type Scores,
  upperLower,
} from '../../src/homework/index.ts';

const items = (scores: Scores): number[] => Array.from({ length: scores[0]!.length }, (_, item) => item);

/**
 * "Item Analysis Worksheet", a teacher-training exercise with its solution (studylib.net, document 25270846): ten students,
 * ten questions, an upper and a lower group of five. Students highest first.
 */
const WORKSHEET: Scores = [
  [1, 1, 1, 1, 1, 1, 1, 1, 1, 1],
  [1, 1, 1, 1, 1, 1, 1, 1, 0, 1],
  [1, 1, 0, 1, 1, 1, 1, 1, 0, 0],
  [0, 1, 1, 1, 1, 1, 0, 1, 0, 1],
  [1, 1, 1, 0, 1, 1, 1, 0, 0, 1],
  [1, 1, 1, 0, 1, 1, 0, 1, 0, 0],
  [0, 1, 1, 0, 1, 1, 0, 1, 0, 1],
  [0, 1, 1, 1, 0, 0, 1, 0, 1, 0],
  [1, 1, 1, 0, 1, 0, 0, 0, 0, 1],
  [0, 1, 0, 0, 0, 1, 0, 0, 1, 0],
];

describe('facility and the upper-lower index', () => {
  it('are as in the worked solution of the worksheet', () => {
    expect(items(WORKSHEET).map((item) => facility(WORKSHEET, item, 1))).toEqual([
      0.6, 1, 0.8, 0.5, 0.8, 0.8, 0.5, 0.6, 0.3, 0.6,
    ]);
    const found = items(WORKSHEET).map((item) => upperLower(WORKSHEET, item, 1, 0.5));
    [0.4, 0, 0, 0.6, 0.4, 0.4, 0.6, 0.4, -0.2, 0.4].forEach((published, item) => {
      expect(found[item]).toBeCloseTo(published, 9);
    });
  });

  it('takes 27 % of forty students as eleven: 9 right against 3 gives 0.55 (a test-theory exercise with its answer, examoo.com 6797)', () => {
    // Eleven strong, eighteen in between, eleven weak; the totals are told apart by twenty further items.
    const row = (own: number, others: number): number[] => [
      own,
      ...Array.from({ length: 20 }, (_, item) => (item < others ? 1 : 0)),
    ];
    const scores = [
      ...Array.from({ length: 11 }, (_, at) => row(at < 9 ? 1 : 0, 20)),
      ...Array.from({ length: 18 }, (_, at) => row(at % 2, 10)),
      ...Array.from({ length: 11 }, (_, at) => row(at < 3 ? 1 : 0, 2)),
    ];
    expect(upperLower(scores, 0, 1)).toBeCloseTo(6 / 11, 9);
  });
});

/**
 * Law School Admission Test, section 6: 1,000 people, five items, as 32 patterns with their frequencies (Bock and Lieberman
 * 1970, Psychometrika 35, 179-197). Frequencies and the figures below, which are those that the R package ltm prints for
 * these data (`descript(LSAT)`; Rizopoulos 2006, Journal of Statistical Software 17(5)), are from memory.
 */
const PATTERNS =
  `00000 3 00001 6 00010 2 00011 11 00100 1 00101 1 00110 3 00111 4 01000 1 01001 8 01011 16 01101 3
01110 2 01111 15 10000 10 10001 29 10010 14 10011 81 10100 3 10101 28 10110 15 10111 80 11000 16 11001 56 11010 21
11011 173 11100 11 11101 61 11110 28 11111 298`.split(/\s+/);

const LSAT: Scores = PATTERNS.flatMap((pattern, index) =>
  index % 2 === 0 ? Array.from({ length: Number(PATTERNS[index + 1]) }, () => [...pattern].map(Number)) : [],
);

describe('the admission test that textbooks use', () => {
  it('has a thousand people and the published facilities', () => {
    expect(LSAT).toHaveLength(1000);
    expect(items(LSAT).map((item) => facility(LSAT, item, 1))).toEqual([0.924, 0.709, 0.553, 0.763, 0.87]);
  });

  it('has the published point-biserial correlations, with the item in the total and without it', () => {
    const totals = LSAT.map((row) => row.reduce((sum, value) => sum + value, 0));
    const included = [0.362, 0.5668, 0.6184, 0.5344, 0.4354];
    const excluded = [0.1128, 0.1532, 0.1728, 0.1444, 0.1216];
    for (const item of items(LSAT)) {
      const own = LSAT.map((row) => row[item]!);
      expect(correlation(own, totals)).toBeCloseTo(included[item]!, 3);
      expect(discrimination(LSAT, item)).toBeCloseTo(excluded[item]!, 3);
    }
  });

  it("has the published Cronbach's alpha", () => {
    expect(alpha(LSAT)).toBeCloseTo(0.295, 3);
  });
});

describe("Cronbach's alpha", () => {
  it('is 0.773 for the ten answers to three questions that introductions to R and Python use (from memory)', () => {
    const answers: Scores = [
      [1, 1, 1],
      [2, 1, 1],
      [2, 1, 2],
      [3, 2, 1],
      [2, 3, 2],
      [2, 3, 3],
      [3, 2, 3],
      [3, 3, 3],
      [2, 3, 2],
      [3, 3, 3],
    ];
    expect(alpha(answers)).toBeCloseTo(0.773, 3);
  });

  it('is formula 20 of Kuder and Richardson (1937) for scores of 0 and 1', () => {
    for (const scores of [WORKSHEET, LSAT]) {
      const count = scores.length;
      const k = scores[0]!.length;
      const totals = scores.map((row) => row.reduce((sum, value) => sum + value, 0));
      const mean = totals.reduce((sum, value) => sum + value, 0) / count;
      const whole = totals.reduce((sum, value) => sum + (value - mean) ** 2, 0) / count;
      const pq = items(scores).reduce((sum, item) => {
        const p = facility(scores, item, 1)!;
        return sum + p * (1 - p);
      }, 0);
      expect(alpha(scores)).toBeCloseTo((k / (k - 1)) * (1 - pq / whole), 9);
    }
  });
});

describe('the corrected item-total correlation', () => {
  const table = fc
    .tuple(fc.integer({ min: 2, max: 6 }), fc.integer({ min: 4, max: 25 }))
    .chain(([width, height]) =>
      fc.array(fc.array(fc.integer({ min: 0, max: 4 }), { minLength: width, maxLength: width }), {
        minLength: height,
        maxLength: height,
      }),
    );

  it('follows from the uncorrected one by the part-whole formula (Henrysson 1963, from memory)', () => {
    fc.assert(
      fc.property(table, (scores) => {
        const totals = scores.map((row) => row.reduce((sum, value) => sum + value, 0));
        const deviation = (list: readonly number[]): number => {
          const mean = list.reduce((sum, value) => sum + value, 0) / list.length;
          return Math.sqrt(list.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (list.length - 1));
        };
        for (const item of items(scores)) {
          const own = scores.map((row) => row[item]!);
          const with_ = correlation(own, totals);
          const without = discrimination(scores, item);
          if (with_ === null || without === null) continue;
          const [si, st] = [deviation(own), deviation(totals)];
          const rest = si ** 2 + st ** 2 - 2 * with_ * si * st;
          expect(without).toBeCloseTo((with_ * st - si) / Math.sqrt(rest), 6);
        }
      }),
    );
  });

  it('and every other figure stay as they are when learners are put in another order', () => {
    fc.assert(
      fc.property(table, fc.nat(24), (scores, by) => {
        const turned = [...scores.slice(by % scores.length), ...scores.slice(0, by % scores.length)];
        const near = (one: number | null, other: number | null): void => {
          if (one === null || other === null) expect(other).toBe(one);
          else expect(other).toBeCloseTo(one, 9);
        };
        near(alpha(scores), alpha(turned));
        for (const item of items(scores)) {
          near(discrimination(scores, item), discrimination(turned, item));
          near(upperLower(scores, item, 4), upperLower(turned, item, 4));
        }
      }),
    );
  });

  it('and alpha are not defined where nobody differs', () => {
    const same: Scores = Array.from({ length: 6 }, () => [1, 0, 1]);
    expect([discrimination(same, 0), upperLower(same, 0, 1), alpha(same)]).toEqual([null, null, null]);
    expect([facility([], 0, 1), alpha([])]).toEqual([null, null]);
  });
});
