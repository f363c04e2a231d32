/** Who can do what, since when, and proven on which drawings: skills by people, from the histories of answers. */
import type { Recall, SkillAnswer } from '../../../shared/memory.ts';
import {
  afterAnswer,
  dueAt,
  expectedShare,
  isHeld,
  isProven,
  mergeHistories,
  newRecall,
  speaksFor,
} from '../../memory/index.ts';
import type { Course } from '../../practice/index.ts';

/**
 * `held`: proven, and by the memory's model not forgotten since. `fading`: proven once, and now below the target: a
 * refresher is due. `not-yet`: not proven, or lost since.
 */
export type Competence =
  | {
      readonly kind: 'held' | 'fading';
      /** When the answer came that proved it, after it was last lost. */
      readonly provenAt: number;
      /** Fingerprints of the circuits it was proven on. */
      readonly provenOn: readonly string[];
      readonly lastAt: number;
      /** When a refresher is due. */
      readonly dueAt: number;
      /** The share of the marks to be expected now, 0 to 1. */
      readonly chance: number;
    }
  | { readonly kind: 'not-yet'; readonly begun: boolean };

export interface PersonRow {
  readonly person: string;
  /** In the order of the skills. */
  readonly cells: readonly Competence[];
}

export interface CompetenceMatrix {
  readonly at: number;
  readonly skills: readonly { readonly id: string; readonly title: string }[];
  readonly rows: readonly PersonRow[];
}

export interface Person {
  readonly id: string;
  /** Practice and homework, from one device or several; merged here in order of time. */
  readonly histories: readonly (readonly SkillAnswer[])[];
}

/** Circuits named as what a skill was proven on, the latest of those that spoke for it. */
const MOST_NAMED = 8;
/** Below this the evidence speaks against it, and what came before has proven nothing: one right answer leaves more. */
const SPEAKS_FOR = 0.5;

interface Proven {
  readonly recall: Recall;
  readonly provenAt: number;
  readonly provenOn: readonly string[];
}

const NOTHING: Proven = { recall: newRecall(), provenAt: 0, provenOn: [] };

/** How a skill stands after one more of its answers. */
function after(before: Proven, answer: SkillAnswer): Proven {
  const recall = afterAnswer(before.recall, answer);
  if (isProven(recall) && isProven(before.recall)) return { ...before, recall };
  // Everything that spoke for it since nothing did.
  const spoken = recall.evidence < SPEAKS_FOR ? [] : before.provenOn;
  const provenOn = speaksFor(before.recall, answer) ? [...spoken, answer.circuit].slice(-MOST_NAMED) : spoken;
  return { recall, provenOn, provenAt: isProven(recall) ? answer.at : before.provenAt };
}

function provenSkills(histories: Person['histories']): ReadonlyMap<string, Proven> {
  const skills = new Map<string, Proven>();
  for (const answer of mergeHistories(histories))
    skills.set(answer.skill, after(skills.get(answer.skill) ?? NOTHING, answer));
  return skills;
}

function competence({ recall, provenAt, provenOn }: Proven, at: number): Competence {
  if (recall.kind === 'new' || !isProven(recall)) return { kind: 'not-yet', begun: recall.kind === 'begun' };
  return {
    kind: isHeld(recall, at) ? 'held' : 'fading',
    provenAt,
    provenOn,
    lastAt: recall.lastAt,
    dueAt: dueAt(recall)!,
    chance: expectedShare(recall, at),
  };
}

/** The matrix at a moment, over all skills of the course in its order, or over `only` these. */
export function competenceMatrix(
  course: Course,
  people: readonly Person[],
  at: number,
  only?: readonly string[],
): CompetenceMatrix {
  const wanted = only ? new Set(only) : undefined;
  const skills = course.graph.skills
    .filter(({ id }) => wanted?.has(id) ?? true)
    .map(({ id, title }) => ({ id, title }));
  const rows = people.map(({ id, histories }): PersonRow => {
    const own = provenSkills(histories);
    return { person: id, cells: skills.map((skill) => competence(own.get(skill.id) ?? NOTHING, at)) };
  });
  return { at, skills, rows };
}

export interface Refresher {
  readonly person: string;
  readonly skill: string;
  readonly dueAt: number;
}

/** What was proven once and is due by a moment, the longest due first. */
export const refreshersDue = ({ skills, rows }: CompetenceMatrix, by: number): readonly Refresher[] =>
  rows
    .flatMap(({ person, cells }) =>
      cells.flatMap((cell, column): Refresher[] =>
        cell.kind !== 'not-yet' && cell.dueAt <= by
          ? [{ person, skill: skills[column]!.id, dueAt: cell.dueAt }]
          : [],
      ),
    )
    .toSorted((one, other) => one.dueAt - other.dueAt);
