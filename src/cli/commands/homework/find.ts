/** Classes and sets in a store, by what somebody calls them. */
import type { ClassSummary } from '../../../../shared/people.ts';
import type { KeptSet, Store } from '../../../store/index.ts';
import { type Kind, theOne } from '../../named.ts';

const CLASS: Kind = {
  none: 'There is no class',
  many: 'classes',
  inPart: true,
  otherwise: 'polewise class new makes one.',
};
const SET: Kind = {
  none: 'There is no set',
  many: 'sets',
  inPart: true,
  otherwise: 'polewise homework new makes one.',
};

export async function findClass({ people }: Store, text: string): Promise<ClassSummary> {
  const all = (await people.classes.list(null)).map((one) => ({ id: one.id, called: one.title, one }));
  return theOne(all, text, CLASS).one;
}

export async function findSet({ people, homework }: Store, text: string): Promise<KeptSet> {
  const direct = await homework.set(text);
  if (direct) return direct;
  const classes = await people.classes.list(null);
  const titles = new Map(classes.map(({ id, title }) => [id, title]));
  const all = await homework.setsOf([...titles.keys()]);
  return theOne(
    all.map((one) => ({ id: one.set.id, called: one.set.title, of: titles.get(one.class), one })),
    text,
    SET,
  ).one;
}
