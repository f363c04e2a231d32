/** A small class to print, made once for all tests of prints. */
import type { HomeworkPlace } from '../../../shared/homework.ts';
import { CODE_BYTES, codeOf, papersFor } from '../../../src/homework/index.ts';
import type { PrintedPaper } from '../../../src/homework/print/index.ts';
import { course, places, seats, setOf } from '../course.ts';

/** Every kind of question once. */
const everyKind: readonly HomeworkPlace[] = [
  ...new Map(places([...course.skills.keys()], 15).map((place) => [place.kind, place])).values(),
];

export const set = setOf(everyKind);
export const made = new Date(0);
export const className = 'Flour line, intake 2026';

export const codeFor = (number: number): string =>
  codeOf(Uint8Array.from({ length: CODE_BYTES }, (_, at) => (number * 37 + at * 91 + 13) & 255));

const NAMES = ['Ada Northfield', 'Ben Sandgate', 'Cora Millrace'];

export const papers: readonly PrintedPaper[] = (() => {
  const all = papersFor(set, seats(NAMES.length));
  if (!all.ok) throw new Error(JSON.stringify(all.problems));
  return all.value.map((paper, index) => ({ paper, name: NAMES[index]!, code: codeFor(index) }));
})();
