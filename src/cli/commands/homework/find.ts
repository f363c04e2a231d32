/** Classes and sets in a store, by what somebody calls them. */
import type { ClassSummary } from '../../../../shared/people.ts';
import type { KeptSet, Store } from '../../../store/index.ts';
import type { CommandWords } from '../../../words/commands.ts';
import { theOne } from '../../named.ts';

export async function findClass({ people }: Store, text: string, words: CommandWords): Promise<ClassSummary> {
  const all = (await people.classes.list(null)).map((one) => ({ id: one.id, called: one.title, one }));
  return theOne(all, text, 'class', words).one;
}

export async function findSet(
  { people, homework }: Store,
  text: string,
  words: CommandWords,
): Promise<KeptSet> {
  const direct = await homework.set(text);
  if (direct) return direct;
  const classes = await people.classes.list(null);
  const titles = new Map(classes.map(({ id, title }) => [id, title]));
  const all = await homework.setsOf([...titles.keys()]);
  return theOne(
    all.map((one) => ({ id: one.set.id, called: one.set.title, of: titles.get(one.class), one })),
    text,
    'set',
    words,
  ).one;
}
