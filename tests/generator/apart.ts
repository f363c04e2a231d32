/** Which misconceptions the circuits of a family tell apart from the right answer, and how often. */
import { accept, eachAsked, type Family, generate, randomOf } from '../../src/generator/index.ts';

export interface Apart {
  readonly family: string;
  /** Of all questions made, the share that tells each misconception apart, the highest first. */
  readonly made: ReadonlyMap<string, number>;
  /** The same of scenarios taken as they come: what there is to choose from. */
  readonly offered: ReadonlyMap<string, number>;
  /** Mean number told apart, and of different wrong answers, of the questions made. */
  readonly told: number;
  readonly answers: number;
  /** Share of all scenarios drafted that are accepted. */
  readonly accepted: number;
  /** Drafts needed for one question. */
  readonly drafts: number;
}

/** A family allows a misconception to be told apart when at least this share of what it offers does. */
export const ALLOWED_FROM = 0.02;

const shares = (lists: readonly (readonly string[])[]): Map<string, number> => {
  const counts = new Map<string, number>();
  for (const list of lists) for (const id of list) counts.set(id, (counts.get(id) ?? 0) + 1);
  return new Map(
    [...counts]
      .sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1))
      .map(([id, count]) => [id, count / lists.length]),
  );
};

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Measures a family over `seeds` seeds, all its sizes in turn. */
export function apartOf(family: Family, seeds: number): Apart {
  const sizes = Array.from(
    { length: family.size.max - family.size.min + 1 },
    (_, index) => family.size.min + index,
  );
  const made: { tellsApart: readonly string[]; wrongAnswers: number; drafts: number }[] = [];
  const offered: (readonly string[])[] = [];
  let judgements = 0;
  let accepted = 0;
  for (let seed = 0; seed < seeds; seed++) {
    const size = sizes[seed % sizes.length]!;
    const generated = generate({ seed: `apart-${seed}`, family: family.id, size });
    if (generated.ok) made.push({ ...generated.accepted, drafts: generated.drafts });
    const draft = family.draft(randomOf(`offered-${family.id}-${seed}`), { size });
    for (const judged of accept(eachAsked(draft), { plain: false })) {
      judgements++;
      if (judged.kind === 'accepted') accepted++;
      if (judged.kind === 'accepted') offered.push(judged.tellsApart);
      else if (judged.reason === 'tells-nothing-apart') offered.push([]);
    }
  }
  return {
    family: family.id,
    made: shares(made.map(({ tellsApart }) => tellsApart)),
    offered: shares(offered),
    told: mean(made.map(({ tellsApart }) => tellsApart.length)),
    answers: mean(made.map(({ wrongAnswers }) => wrongAnswers)),
    accepted: accepted / judgements,
    drafts: mean(made.map(({ drafts }) => drafts)),
  };
}

export const allowed = ({ offered }: Apart): string[] =>
  [...offered].filter(([, share]) => share >= ALLOWED_FROM).map(([id]) => id);
