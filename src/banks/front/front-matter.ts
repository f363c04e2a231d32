import { z } from 'zod';
import { bankName, bankSkill, topic } from '../../../shared/bank.ts';
import type { Position } from '../position.ts';
import type { BankReport } from '../report.ts';
import type { Lines } from '../source.ts';
import { reportShape } from './shape-problems.ts';
import { readYaml } from './yaml-tree.ts';

/** A text of one line, with nothing in it that a terminal would obey. */
const line = (most: number) =>
  z
    .string()
    .trim()
    .min(1)
    .max(most)
    .regex(/^[^\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]*$/u);

const frontMatter = z.strictObject({
  id: bankName,
  language: topic.shape.language,
  title: line(120),
  summary: line(300),
  order: topic.shape.order,
  skills: z
    .array(
      z.strictObject({
        ...bankSkill.shape,
        title: line(120),
        /** A skill that stands on nothing may leave it out. */
        needs: bankSkill.shape.needs.default([]),
        lesson: line(120).optional(),
      }),
    )
    .min(1)
    .max(50),
});

type FrontMatter = Readonly<z.infer<typeof frontMatter>>;

/** Where parts of the front matter stand, for checks that need more than the file's own front matter. */
export interface FrontPlaces {
  /** The value at a path such as `['skills', 0, 'id']`. */
  positionOf(path: readonly PropertyKey[]): Position;
}

export interface ReadFront {
  readonly matter: FrontMatter;
  readonly places: FrontPlaces;
}

/** Reads and checks front matter; undefined when there is a mistake in it (every one reported). */
export function readFrontMatter(lines: Lines, report: BankReport): ReadFront | undefined {
  const tree = readYaml(lines, report);
  if (!tree) return undefined;
  const parsed = frontMatter.safeParse(tree.value);
  if (parsed.success) return { matter: parsed.data, places: tree };
  reportShape(parsed.error.issues, tree, report);
  return undefined;
}
