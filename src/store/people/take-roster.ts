/** Brings a class up to a roster. Nobody is taken out, and nobody is renamed. */
import type { Kysely, Transaction } from 'kysely';
import { MOST_IN_CLASS, type RosterLine } from '../../../shared/api-people.ts';
import type { Manner, Member, Person } from '../../../shared/people.ts';
import type { StoreWords } from '../../words/en/store.ts';
import type { StatementOf } from '../../words/statement.ts';
import type { Tables } from '../schema.ts';
import { lockClass } from './classes.ts';
import { Names } from './look-alike.ts';
import { insertMember, learnersIn, membersOf } from './memberships.ts';
import { insertPerson, personIn } from './person-row.ts';

/** Somebody whom a roster wants in the class. */
export interface WantedMember {
  /** As the roster names them: the person's id where the roster came from here. */
  readonly id: string | null;
  readonly name: string;
  readonly signIn: string | null;
  readonly manner: Manner;
}

export type PassedOver = StatementOf<StoreWords['passedOver']>;

export interface TakenRoster {
  readonly lines: readonly RosterLine[];
  /** Who was passed over, and why. */
  readonly passedOver: readonly PassedOver[];
}

export interface RosterManner {
  /** Only an administrator brings in people who are in no class of the one who asks, and tutors. */
  readonly asAdmin: boolean;
  /** Nothing is kept. */
  readonly look: boolean;
}

type Step =
  | { readonly kind: 'join'; readonly person: Person }
  | { readonly kind: 'make' }
  | { readonly kind: 'pass'; readonly why: PassedOver };

/** Thrown to undo what was done, and told as a result outside. */
class Undone extends Error {
  readonly result: TakenRoster | 'class-full';

  constructor(result: TakenRoster | 'class-full') {
    super('undone');
    this.result = result;
  }
}

async function personBy(db: Kysely<Tables>, column: 'id' | 'sign_in', value: string | null) {
  if (value === null) return null;
  const row = await db.selectFrom('people').selectAll().where(column, '=', value).executeTakeFirst();
  return row ? personIn(row) : null;
}

/** The one in the class who is meant, whom no earlier line meant. */
function memberFor(members: readonly Member[], taken: ReadonlySet<string>, wanted: WantedMember) {
  const free = members.filter(({ id }) => !taken.has(id));
  return (
    free.find(({ id }) => id === wanted.id) ??
    free.find(({ signIn }) => signIn !== null && signIn === wanted.signIn) ??
    free.find(({ name, manner }) => name === wanted.name && manner === wanted.manner)
  );
}

async function stepFor(db: Kysely<Tables>, wanted: WantedMember, asAdmin: boolean): Promise<Step> {
  const { name, signIn, manner } = wanted;
  const bySignIn = await personBy(db, 'sign_in', signIn);
  const person = bySignIn ?? (asAdmin ? await personBy(db, 'id', wanted.id) : null);
  if (person && !asAdmin) return { kind: 'pass', why: { says: 'signInTaken', name, signIn: String(signIn) } };
  if (manner === 'tutor' && !asAdmin) return { kind: 'pass', why: { says: 'tutor', name } };
  if (!person) return { kind: 'make' };
  if (manner === 'tutor' && person.role === 'learner')
    return { kind: 'pass', why: { says: 'isLearner', name } };
  return { kind: 'join', person };
}

async function takeAll(
  db: Transaction<Tables>,
  id: string,
  wanted: readonly WantedMember[],
  asAdmin: boolean,
  now: number,
): Promise<TakenRoster> {
  const members = await membersOf(db, id);
  const names = new Names(members.map((member) => member.name));
  const taken = new Set<string>();
  const lines: RosterLine[] = [];
  const passedOver: PassedOver[] = [];
  for (const one of wanted) {
    const { name, manner, signIn } = one;
    const known = memberFor(members, taken, one);
    if (known) {
      taken.add(known.id);
      lines.push({ name: known.name, manner: known.manner, result: 'already' });
      continue;
    }
    const alike = names.alike(name);
    if (alike !== undefined) {
      passedOver.push({ says: 'looksLike', name, other: alike });
      continue;
    }
    names.add(name);
    const step = await stepFor(db, one, asAdmin);
    if (step.kind === 'pass') {
      passedOver.push(step.why);
      continue;
    }
    const person =
      step.kind === 'join' ? step.person : await insertPerson(db, { name, role: manner, signIn }, now);
    if (!person) {
      passedOver.push({ says: 'signInBegun', name, signIn: String(signIn) });
      continue;
    }
    const isNew = await insertMember(db, id, person.id, manner, now);
    const result = !isNew ? 'already' : step.kind === 'join' ? 'joined' : 'new';
    lines.push({ name: person.name, manner, result });
  }
  return { lines, passedOver };
}

/** All of it or nothing; null when there is no such class. */
export async function takeRoster(
  db: Kysely<Tables>,
  id: string,
  wanted: readonly WantedMember[],
  { asAdmin, look }: RosterManner,
  now: number,
): Promise<TakenRoster | 'class-full' | null> {
  if (wanted.length > 2 * MOST_IN_CLASS) return 'class-full';
  try {
    return await db.transaction().execute(async (transaction) => {
      if (!(await lockClass(transaction, id))) return null;
      const result = await takeAll(transaction, id, wanted, asAdmin, now);
      if ((await learnersIn(transaction, id)) > MOST_IN_CLASS) throw new Undone('class-full');
      if (look) throw new Undone(result);
      return result;
    });
  } catch (error) {
    if (error instanceof Undone) return error.result;
    throw error;
  }
}
