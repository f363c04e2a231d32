/** The class and the person that somebody names on the command line. */
import type { ClassDetail, Person } from '../../../../shared/people.ts';
import type { Store } from '../../../store/index.ts';
import type { CommandWords } from '../../../words/commands.ts';
import { theOne } from '../../named.ts';
import { findClass } from '../homework/find.ts';

/** People looked up at once. */
const PAGE = 200;

export async function classNamed(store: Store, name: string, words: CommandWords): Promise<ClassDetail> {
  const { id } = await findClass(store, name, words);
  return (await store.people.classes.get(id))!;
}

/** By the id, by the name for signing in, or by the display name where only one has it. */
export async function personNamed({ people }: Store, name: string, words: CommandWords): Promise<Person> {
  const exact = (await people.persons.byId(name)) ?? (await people.persons.bySignIn(name))?.person;
  if (exact) return exact;
  const like: Person[] = [];
  for (;;) {
    const { people: some } = await people.persons.find(name, like.length, PAGE);
    like.push(...some);
    if (some.length < PAGE) break;
  }
  return theOne(
    like.map((one) => ({ id: one.id, called: one.name, of: one.signIn, one })),
    name,
    'person',
    words,
  ).one;
}
