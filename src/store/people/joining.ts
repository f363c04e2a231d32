/** How people come into a class: by its code, by their names, or from a roster. A class is never more than full. */
import type { Kysely, Transaction } from 'kysely';
import { MOST_IN_CLASS } from '../../../shared/api-people.ts';
import type { Person } from '../../../shared/people.ts';
import type { Tables } from '../schema.ts';
import { lockClass } from './classes.ts';
import { type MadeLink, makeLink } from './links.ts';
import { Names } from './look-alike.ts';
import { insertMember, learnersIn, membersOf } from './memberships.ts';
import { insertPerson, type NewPerson } from './person-row.ts';
import { type RosterManner, takeRoster, type WantedMember } from './take-roster.ts';

export type JoinRefusal = 'code-refused' | 'class-full' | 'name-taken' | 'name-alike';
export interface AddedPerson {
  readonly person: Person;
  readonly link: MadeLink;
}

/** Thrown inside a transaction to undo it, and told as a result outside. */
class Refused extends Error {
  readonly why: JoinRefusal;

  constructor(why: JoinRefusal) {
    super(why);
    this.why = why;
  }
}

const orRefusal = async <T>(work: Promise<T>): Promise<T | JoinRefusal> => {
  try {
    return await work;
  } catch (error) {
    if (error instanceof Refused) return error.why;
    throw error;
  }
};

const openByCode = (db: Kysely<Tables>, code: string) =>
  db
    .selectFrom('classes')
    .select(['id', 'title'])
    .where('joining_code', '=', code)
    .where('joining_open', '=', 1)
    .where('ended_at', 'is', null)
    .executeTakeFirst();

/** The class of a code, locked, with room for one more. */
async function roomByCode(db: Transaction<Tables>, code: string): Promise<string> {
  const found = await db
    .updateTable('classes')
    .set({ joining_open: 1 })
    .where('joining_code', '=', code)
    .where('joining_open', '=', 1)
    .where('ended_at', 'is', null)
    .returning('id')
    .executeTakeFirst();
  if (!found) throw new Refused('code-refused');
  if ((await learnersIn(db, found.id)) >= MOST_IN_CLASS) throw new Refused('class-full');
  return found.id;
}

/** The names in a class, but for one person's. */
async function namesIn(db: Transaction<Tables>, id: string, but?: string): Promise<Names> {
  const members = await membersOf(db, id);
  return new Names(members.flatMap((member) => (member.id === but ? [] : [member.name])));
}

/** Makes a learner of each name. Two of the same there may be; two that only look the same would be taken for one another. */
async function addLearners(
  db: Transaction<Tables>,
  id: string,
  names: readonly string[],
  now: number,
): Promise<readonly AddedPerson[]> {
  const added: AddedPerson[] = [];
  const there = await namesIn(db, id);
  for (const name of names) {
    if (there.alike(name)) throw new Refused('name-alike');
    there.add(name);
    const person = (await insertPerson(db, { name, role: 'learner' }, now))!;
    await insertMember(db, id, person.id, 'learner', now);
    added.push({ person, link: await makeLink(db, person.id, now) });
  }
  return added;
}

export const joiningOn = (db: Kysely<Tables>, now: () => number) => ({
  /** The title of the class that a code lets into; null when there is none. */
  async look(code: string): Promise<string | null> {
    return (await openByCode(db, code))?.title ?? null;
  },

  /** Makes a learner in the class of a code, both or neither. */
  asNew: (code: string, person: Omit<NewPerson, 'role'>): Promise<Person | JoinRefusal> =>
    orRefusal(
      db.transaction().execute(async (transaction) => {
        const id = await roomByCode(transaction, code);
        // Who chooses a name chooses one that nobody there can be taken for.
        const names = await namesIn(transaction, id);
        if (names.has(person.name) || names.alike(person.name)) throw new Refused('name-alike');
        const made = await insertPerson(transaction, { ...person, role: 'learner' }, now());
        if (!made) throw new Refused('name-taken');
        await insertMember(transaction, id, made.id, 'learner', now());
        return made;
      }),
    ),

  /** Lets somebody who is there already into the class of a code; who is in it stays in it as they were. */
  asKnown: (code: string, person: string): Promise<'joined' | JoinRefusal> =>
    orRefusal(
      db.transaction().execute(async (transaction) => {
        const id = await roomByCode(transaction, code);
        const known = await transaction
          .selectFrom('people')
          .select('name')
          .where('id', '=', person)
          .executeTakeFirst();
        if (known && (await namesIn(transaction, id, person)).alike(known.name))
          throw new Refused('name-alike');
        await insertMember(transaction, id, person, 'learner', now());
        return 'joined' as const;
      }),
    ),

  /** Makes learners in a class by their names, each with a link; all of them or none. Null when there is no such class. */
  byNames: (id: string, names: readonly string[]): Promise<readonly AddedPerson[] | JoinRefusal | null> =>
    orRefusal(
      db.transaction().execute(async (transaction) => {
        if (!(await lockClass(transaction, id))) return null;
        if ((await learnersIn(transaction, id)) + names.length > MOST_IN_CLASS)
          throw new Refused('class-full');
        return addLearners(transaction, id, names, now());
      }),
    ),

  /** See `takeRoster`. */
  byRoster: (id: string, wanted: readonly WantedMember[], manner: RosterManner) =>
    takeRoster(db, id, wanted, manner, now()),
});

export type Joining = ReturnType<typeof joiningOn>;
