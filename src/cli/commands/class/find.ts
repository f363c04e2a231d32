/** The class and the person that somebody names on the command line. */
import type { ClassDetail, Person } from '../../../../shared/people.ts';
import type { Store } from '../../../store/index.ts';
import { UsageError } from '../../io.ts';
import { findClass } from '../homework/find.ts';

export async function classNamed(store: Store, name: string): Promise<ClassDetail> {
  const { id } = await findClass(store, name);
  return (await store.people.classes.get(id))!;
}

/** By the id, by the name for signing in, or by the display name where only one has it. */
export async function personNamed({ people }: Store, name: string): Promise<Person> {
  const exact = (await people.persons.byId(name)) ?? (await people.persons.bySignIn(name))?.person;
  if (exact) return exact;
  const like = (await people.persons.find(name, 0, 200)).people;
  const found = like.filter((one) => one.name.toLowerCase() === name.toLowerCase());
  if (found.length === 1) return found[0]!;
  if (found.length > 1)
    throw new UsageError(
      `${found.length} people are called ${name}.`,
      `Name one by the id: ${found.map(({ id }) => id).join(', ')}.`,
    );
  throw new UsageError(`There is nobody called ${name}.`, 'polewise class show names those in a class.');
}
