import type { Bank } from '../../shared/bank.ts';
import type { Checked } from '../../shared/problem.ts';
import { nearest } from '../circuit/index.ts';
import { checkSkills } from '../memory/index.ts';
import { BANK_LIMITS } from './limits.ts';
import type { Position } from './position.ts';
import { checkSkillsNamed, type PlacedTopic, readPlaced } from './read-topic.ts';
import { BankReport } from './report.ts';
import type { BankFile } from './source.ts';
import { checkYields } from './yields.ts';

export interface ReadBankOptions {
  /**
   * Also try whether each recipe gives questions, which takes some milliseconds a recipe: for authors, not each time a
   * bank is opened.
   */
  readonly tryRecipes?: boolean;
}

/**
 * Reads a bank: all its topics, and what concerns more than one of them. Refused whole, with every mistake in it, file
 * by file; topics come by their order.
 */
export function readBank(
  files: readonly BankFile[],
  { tryRecipes = false }: ReadBankOptions = {},
): Checked<Bank> {
  if (files.length > BANK_LIMITS.files) {
    const report = new BankReport(files[BANK_LIMITS.files]!.file);
    report.add(
      { says: 'bank-too-large.files', files: files.length, most: BANK_LIMITS.files },
      { line: 1, column: 1 },
    );
    return report.conclude<Bank>(undefined);
  }
  const reports = files.map(({ file }) => new BankReport(file));
  const read = files.map((file, index) => readPlaced(file, reports[index]!));
  const topics = read.flatMap((placed, index) => (placed ? [{ placed, report: reports[index]! }] : []));
  checkNames(topics);
  // With a topic missing because it couldn't be read, everything that stands on it would seem to be unknown.
  if (topics.length === files.length) {
    checkGraph(topics);
    checkReferences(topics);
  }
  if (tryRecipes) for (const { placed, report } of topics) if (report.clean) checkYields(placed, report);
  const problems = reports.flatMap((report) => report.problems);
  if (problems.length > 0) return { ok: false, problems };
  const inOrder = topics.map(({ placed }) => placed.topic).toSorted((a, b) => a.order - b.order);
  return { ok: true, value: { topics: inOrder } };
}

interface Reported {
  readonly placed: PlacedTopic;
  readonly report: BankReport;
}

/** Topics with the same name or the same place in the order. */
function checkNames(topics: readonly Reported[]): void {
  topics.forEach(({ placed, report }, index) => {
    const { id, order } = placed.topic;
    for (const { placed: other } of topics.slice(0, index)) {
      if (other.topic.id === id)
        report.add(
          { says: 'bank-repeated-name', topic: id, file: other.file },
          placed.places.positionOf(['id']),
        );
      if (other.topic.order === order)
        report.add(
          { says: 'bank-repeated-order', topic: other.topic.id, order },
          placed.places.positionOf(['order']),
        );
    }
  });
}

/** The skill graph over all topics: skills that are there twice, prerequisites that aren't there, circles. */
function checkGraph(topics: readonly Reported[]): void {
  const all = topics.flatMap(({ placed, report }) =>
    placed.topic.skills.map(({ id, title, needs }, index) => ({
      skill: { id, title, needs },
      report,
      positionOf: (...path: PropertyKey[]) => placed.places.positionOf(['skills', index, ...path]),
    })),
  );
  const known = new Set(all.map(({ skill }) => skill.id));
  // What is asked for here is an index; the place in the file comes from it.
  const graph = checkSkills(
    all.map(({ skill }) => skill),
    (index) => ({ line: index + 1 }),
  );
  if (graph.ok) return;
  const unknownTold = new Map<number, number>();
  for (const { line = 1, ...problem } of graph.problems) {
    const { skill, report, positionOf } = all[line - 1]!;
    let position = positionOf('id');
    if (problem.code === 'unknown-skill') {
      // They come in the order of the list, so the n-th problem of a skill is about its n-th unknown prerequisite.
      const told = unknownTold.get(line) ?? 0;
      const unknown = skill.needs.flatMap((need, at) => (known.has(need) ? [] : [at]));
      unknownTold.set(line, told + 1);
      position = positionOf('needs', unknown[told] ?? 0);
    }
    report.within([problem], position);
  }
}

/** Skills that questions name, and links from one topic to another. */
function checkReferences(topics: readonly Reported[]): void {
  const ids = topics.map(({ placed }) => placed.topic.id);
  for (const { placed, report } of topics) {
    checkSkillsNamed(placed, new Set(placed.topic.skills.map(({ id }) => id)), report);
    for (const { topic, position } of placed.links)
      if (!ids.includes(topic)) reportLink(topic, position, ids, report);
  }
}

function reportLink(topic: string, position: Position, ids: readonly string[], report: BankReport): void {
  report.add({ says: 'bank-link', topic, meant: nearest(topic, ids), example: ids[0]! }, position);
}
