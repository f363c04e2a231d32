/** Classes and sets by what somebody calls them: the id, the title, or a part of the title that only one has. */
import type { ClassSummary } from '../../../../shared/people.ts';
import type { KeptSet, Store } from '../../../store/index.ts';
import { UsageError } from '../../io.ts';

interface Named {
  readonly id: string;
  readonly title: string;
}

const listed = (some: readonly Named[]): string =>
  some.map(({ id, title }) => `    ${id}  ${title}`).join('\n');

/**
 * The one that is meant.
 *
 * @throws UsageError when there is none, or several, with all that could be meant
 */
function theOne<T extends Named>(all: readonly T[], text: string, what: string, otherwise: string): T {
  const small = text.toLowerCase();
  const exact = all.filter(({ id, title }) => id === text || title.toLowerCase() === small);
  const found = exact.length > 0 ? exact : all.filter(({ title }) => title.toLowerCase().includes(small));
  const [one, another] = found;
  if (one && !another) return one;
  if (one)
    throw new UsageError(
      `There are ${found.length} ${what} that ${text} could be.`,
      `Name it by its id:\n${listed(found)}`,
    );
  const there = all.slice(0, 20);
  throw new UsageError(
    `There is no ${what === 'classes' ? 'class' : 'set'} ${text}.`,
    there.length > 0 ? `There are:\n${listed(there)}` : otherwise,
  );
}

export async function findClass({ people }: Store, text: string): Promise<ClassSummary> {
  return theOne(await people.classes.list(null), text, 'classes', 'polewise class new makes one.');
}

export async function findSet({ people, homework }: Store, text: string): Promise<KeptSet> {
  const direct = await homework.set(text);
  if (direct) return direct;
  const classes = await people.classes.list(null);
  const sets = await homework.setsOf(classes.map(({ id }) => id));
  const named = sets.map((kept) => ({ id: kept.set.id, title: kept.set.title, kept }));
  return theOne(named, text, 'sets', 'polewise homework new makes one.').kept;
}
