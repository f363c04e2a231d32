/** What somebody may see and do beyond the role: a tutor has only classes of their own, an administrator has all. */
import type { Person } from '../../../shared/people.ts';
import type { Store } from '../../store/index.ts';
import { noSuchThing } from '../problems.ts';
import type { Asking } from './gate.ts';

/** Refuses, as if it weren't there, a class that one isn't tutor of. That an administrator's class exists shows later. */
export async function checkTeaches({ people }: Store, person: Asking, id: string): Promise<void> {
  if (person.role === 'admin') return;
  if (person.role !== 'tutor' || (await people.classes.mannerOf(id, person.id)) !== 'tutor')
    throw noSuchThing();
}

/**
 * Whether somebody may be looked after at all. Tutors and administrators are looked after by administrators only, even
 * where they learn in somebody's class: else a link for one of them would be the way to their rights.
 */
export const mayCareFor = (asking: Asking, person: Pick<Person, 'role'>): boolean =>
  asking.role === 'admin' || (asking.role === 'tutor' && person.role === 'learner');

/** The person, for one who may look after them: a tutor of a class of theirs, or an administrator. */
export async function inCareOf({ people }: Store, person: Asking, id: string): Promise<Person> {
  const found = await people.persons.byId(id);
  if (!found || !mayCareFor(person, found)) throw noSuchThing();
  if (person.role !== 'admin' && !(await people.classes.teaches(person.id, id))) throw noSuchThing();
  return found;
}
