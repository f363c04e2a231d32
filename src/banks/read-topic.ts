import type { LessonSection, Topic } from '../../shared/bank.ts';
import type { Checked } from '../../shared/problem.ts';
import { nearest } from '../circuit/index.ts';
import { type FrontPlaces, type ReadFront, readFrontMatter } from './front/front-matter.ts';
import { splitFrontMatter } from './front/split.ts';
import type { TopicLink } from './lesson/prose.ts';
import { readLesson } from './lesson/sections.ts';
import type { Position } from './position.ts';
import { checkRecipes } from './recipes.ts';
import { BankReport } from './report.ts';
import { type BankFile, linesOf } from './source.ts';

/** A topic with the places that checks across topics need. */
export interface PlacedTopic {
  readonly file: string;
  readonly topic: Topic;
  readonly places: FrontPlaces;
  readonly links: readonly TopicLink[];
  /** Skills that questions name, where they name them. */
  readonly skillsNamed: readonly { readonly skill: string; readonly position: Position }[];
}

/**
 * Reads one topic. Refused whole, with every mistake in it, each with file, line and column. Whether its prerequisites
 * and links to other topics are there is known only when all topics are: see `readBank`.
 *
 * @param file - its name is the topic's id with `.md`; folders before it don't matter
 */
export function readTopic(file: string, text: string): Checked<Topic> {
  const report = new BankReport(file);
  const placed = readPlaced({ file, text }, report);
  if (placed) checkSkillsNamed(placed, new Set(placed.topic.skills.map(({ id }) => id)), report);
  return report.conclude(placed?.topic);
}

/** As `readTopic`; the skills that questions name are left to be checked. Undefined when there was any mistake. */
export function readPlaced({ file, text }: BankFile, report: BankReport): PlacedTopic | undefined {
  const lines = linesOf(text, report);
  const split = lines && splitFrontMatter(lines, report);
  if (!split) return undefined;
  const front = readFrontMatter(split.front, report);
  const lesson = readLesson(split.body, report);
  if (front) checkRecipes(front, report);
  if (front) checkFileName(file, front.matter.id, front.places.positionOf(['id']), report);
  if (!front || !lesson) return undefined;
  const { sections, blocks, links } = lesson;
  checkLessons(front, sections, report);
  return {
    file,
    topic: {
      ...front.matter,
      lesson: [...sections],
      circuits: [...blocks.circuits.values()].filter((circuit) => circuit !== undefined),
      questions: blocks.questions,
    },
    places: front.places,
    links,
    skillsNamed: blocks.skillsNamed,
  };
}

/** Reports the questions that name a skill there isn't. */
export function checkSkillsNamed(
  { skillsNamed }: PlacedTopic,
  known: ReadonlySet<string>,
  report: BankReport,
): void {
  for (const { skill, position } of skillsNamed)
    if (!known.has(skill))
      report.add({ says: 'bank-unknown-skill', skill, meant: nearest(skill, known) }, position);
}

const hasText = ({ parts }: LessonSection): boolean => parts.some(({ kind }) => kind === 'text');

/** Reports skills that name a section of the lesson there isn't, or one with nothing to read. */
function checkLessons(
  { matter, places }: ReadFront,
  sections: readonly LessonSection[],
  report: BankReport,
): void {
  const headings = sections.filter(hasText).flatMap(({ title }) => title ?? []);
  for (const [at, { lesson }] of matter.skills.entries())
    if (lesson !== undefined && !headings.includes(lesson))
      report.add(
        { says: 'bank-unknown-heading', heading: lesson, headings, meant: nearest(lesson, headings) },
        places.positionOf(['skills', at, 'lesson']),
      );
}

function checkFileName(file: string, id: string, position: Position, report: BankReport): void {
  const name = file.split(/[\\/]/).at(-1) ?? '';
  if (name !== `${id}.md`) report.add({ says: 'bank-file-name', topic: id, file: name }, position);
}
