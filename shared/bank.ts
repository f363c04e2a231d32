/**
 * A question bank as data: topics with a lesson, skills, recipes for fresh questions and questions that an author wrote.
 * This is what the Markdown files of question-banks/ become (docs/writing-a-bank.md), and what practice, homework, the
 * page and the terminal read.
 */
import { z } from 'zod';
import { circuit } from './circuit.ts';
import { formName } from './form-name.ts';
import { languageTag } from './language-tag.ts';
import { skill, skillId } from './memory.ts';
import { answer, question, questionKind } from './question.ts';
import { happens, scenario } from './scenario.ts';

/** The name of a topic (also its file's name), of a circuit in it, of a question in it. */
export const bankName = z
  .string()
  .max(64)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, formName('form.bankName'));

/** Sizes of circuits that a recipe may ask for: 1 (smallest) to 8, each family on its own scale. */
const circuitSize = z.number().int().min(1).max(8);

/**
 * How fresh questions for a skill are made: any of these families, asked in any of these kinds, in a size from the
 * first to the second. Recipes of one skill take turns in proportion to `share`.
 */
export const recipe = z.strictObject({
  families: z.array(z.string().min(1).max(60)).min(1).max(40),
  kinds: z.array(questionKind).min(1),
  size: z.tuple([circuitSize, circuitSize]),
  happens: happens.optional(),
  share: z.number().positive().max(100).default(1),
});

/** A skill as a bank teaches it: what it stands on may be in another topic. */
export const bankSkill = z.strictObject({
  ...skill.shape,
  recipes: z.array(recipe).min(1).max(20),
  /** The heading of the section of its topic's lesson that helps most where it goes wrong; left out: the first one. */
  lesson: z.string().min(1).max(120).optional(),
});

/** A circuit that the lesson shows and that drawings and questions of the same topic may refer to. */
export const lessonCircuit = z.strictObject({ id: bankName, circuit });

/** One piece of a lesson, in reading order. */
export const lessonPart = z.discriminatedUnion('kind', [
  /**
   * Paragraphs, lists, tables and quotes (a quote is a caution) in Markdown, without headings, pictures and raw HTML; its
   * links lead to https addresses or to other topics (`changeover-pole.md`).
   */
  z.strictObject({ kind: z.literal('text'), markdown: z.string() }),
  /** A circuit of the topic, at rest as drawn (`scenario` null) or as it stands after a scenario. */
  z.strictObject({ kind: z.literal('drawing'), circuit: bankName, scenario: scenario.nullable() }),
  /** The place of one of the topic's questions. */
  z.strictObject({ kind: z.literal('question'), question: bankName }),
]);

/** What stands under one heading; the first one may have none. `depth`: 2 for a section, 3 for a part of one. */
export const lessonSection = z.strictObject({
  title: z.string().min(1).max(120).nullable(),
  depth: z.union([z.literal(2), z.literal(3)]),
  parts: z.array(lessonPart),
});

/** A question that somebody wrote, with the author's answer, which the solver has confirmed. */
export const fixedQuestion = z.strictObject({
  id: bankName,
  skill: skillId,
  question,
  answer,
  /** What the author wants to say about it after it has been answered, beside the explanation from the trace. */
  because: z.string().min(1).max(2000).optional(),
});

export const topic = z.strictObject({
  id: bankName,
  /** In which language titles, lesson and remarks are written, and the texts of circuits; the first banks didn't say. */
  language: languageTag.default('en'),
  title: z.string().min(1).max(120),
  summary: z.string().min(1).max(300),
  /** Its place among the topics, from the first to be learnt. */
  order: z.number().int().min(1).max(10_000),
  skills: z.array(bankSkill).min(1).max(50),
  lesson: z.array(lessonSection),
  circuits: z.array(lessonCircuit),
  questions: z.array(fixedQuestion),
});

/** Topics by their order; every skill that one stands on is in one of them, and no skill stands on itself. */
export const bank = z.strictObject({ topics: z.array(topic) });

export type Recipe = Readonly<z.infer<typeof recipe>>;
export type BankSkill = Readonly<z.infer<typeof bankSkill>>;
export type LessonCircuit = Readonly<z.infer<typeof lessonCircuit>>;
export type LessonPart = Readonly<z.infer<typeof lessonPart>>;
export type LessonSection = Readonly<z.infer<typeof lessonSection>>;
export type FixedQuestion = Readonly<z.infer<typeof fixedQuestion>>;
export type Topic = Readonly<z.infer<typeof topic>>;
export type Bank = Readonly<z.infer<typeof bank>>;
