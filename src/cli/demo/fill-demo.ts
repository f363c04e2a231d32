/** Fills a store with the made-up groups and three weeks of their work. */
import type { Desk } from '../../server/homework/desk.ts';
import { prepareSome } from '../../server/homework/make-papers.ts';
import { markedPaper, overridePaper, paperRows } from '../../server/homework/marked.ts';
import { draftSet, issueSet } from '../../server/homework/sets.ts';
import { Passwords } from '../../server/index.ts';
import { HOUR, SETS, wishOf, workOnPaper } from './made-up-homework.ts';
import {
  ADMINISTRATOR,
  GROUPS,
  type MadeUpGroup,
  type MadeUpPerson,
  type MadeUpWords,
  TUTOR,
} from './made-up-people.ts';
import { daysBefore, type Practising, practiseDay, startPractising, WEEKS } from './made-up-practice.ts';

/** Everybody's in the demo, which is reached from this machine only. */
export const DEMO_PASSWORD = 'flour-line-demo';

const TUTORING = (id: string) => ({ id, role: 'tutor', session: null }) as const;

export interface Filling {
  readonly desk: Desk;
  /** The names of people, classes and sets, and what is written. */
  readonly words: MadeUpWords;
  /** The clock of the store, moved through the three weeks. */
  readonly clock: { at: number };
  readonly now: number;
  /** Told how much of the whole is done, 0 to 1. */
  progress(share: number): void;
}

/** The first moment of a day, counted from the first of the three weeks, on this machine's clock. */
function calendar(now: number): (day: number) => number {
  const first = new Date(daysBefore(now)[0]!);
  return (day) => new Date(first.getFullYear(), first.getMonth(), first.getDate() + day).getTime();
}

async function addGroup(
  { desk, words, clock }: Filling,
  group: MadeUpGroup,
  tutor: string,
  passwordHash: string,
): Promise<{ readonly id: string; readonly members: readonly Practising[] }> {
  const { people } = desk.store;
  const { title, intake } = words.groups[group.id];
  const { id, joiningCode } = await people.classes.make(title, intake, tutor);
  const members: Practising[] = [];
  for (const learner of group.learners) {
    clock.at += 60_000;
    const made = await people.joining.asNew(joiningCode.replace('-', ''), {
      name: words.people[learner.signIn],
      signIn: learner.signIn,
      passwordHash,
    });
    if (typeof made === 'string') throw new Error(`${learner.signIn}: ${made}`);
    members.push(startPractising(learner, made.id));
  }
  return { id, members };
}

/** Issues a set on its day and makes everybody's paper. */
async function issue(
  { desk, words, clock }: Filling,
  tutor: string,
  group: string,
  index: number,
  dayOf: (day: number) => number,
): Promise<string> {
  const wanted = SETS[index]!;
  clock.at = dayOf(wanted.opens) + 7 * HOUR;
  const { set } = await draftSet(desk, TUTORING(tutor), group, wishOf(wanted, words, dayOf));
  await issueSet(desk, TUTORING(tutor), set.id);
  for (;;) {
    const { made, of } = await prepareSome(desk, TUTORING(tutor), set.id);
    if (made >= of) return set.id;
  }
}

/** The day on which a learner does a set; null where it is forgotten, or still to be done. */
function workDay({ learner, random }: Practising, index: number): number | null {
  const { opens, closes } = SETS[index]!;
  const own = random.child(`set/${index}`);
  if (!own.chance(0.55 + 0.45 * learner.diligence)) return null;
  const day = own.int(opens, closes - 1);
  return day < WEEKS * 7 ? day : null;
}

/** A tutor looks at a low mark of the second set and gives half of it back, with the reason. */
async function overrideOne(
  { desk, words, clock }: Filling,
  tutor: string,
  set: string,
  at: number,
): Promise<void> {
  clock.at = at;
  const { papers } = await paperRows(desk, TUTORING(tutor), set);
  const paper = papers.find(({ total }) => total !== null && total.earned < total.outOf);
  if (!paper) return;
  const { mark } = await markedPaper(desk, TUTORING(tutor), paper.id);
  const item = mark.items.findIndex(({ mark: { share } }) => share < 0.5);
  if (item < 0) return;
  await overridePaper(desk, TUTORING(tutor), paper.id, {
    item,
    earned: 1,
    reason: words.overrideReason,
  });
}

export async function fillDemo(filling: Filling): Promise<void> {
  const { desk, words, clock, now, progress } = filling;
  const { people } = desk.store;
  const dayOf = calendar(now);
  clock.at = dayOf(0) + 7 * HOUR;
  const named = (signIn: MadeUpPerson) => ({ signIn, name: words.people[signIn] });
  const passwordHash = await new Passwords().hash(DEMO_PASSWORD);
  await people.persons.make({ ...named(ADMINISTRATOR), role: 'admin', passwordHash });
  const tutor = await people.persons.make({ ...named(TUTOR), role: 'tutor', passwordHash });
  if (!tutor) throw new RangeError('the store has people already');
  const groups = [];
  for (const group of GROUPS) groups.push(await addGroup(filling, group, tutor.id, passwordHash));
  const everybody = groups.flatMap(({ members }) => members);
  const [first] = groups;
  const sets = new Map<number, string>();
  const days = daysBefore(now);
  for (const [index, day] of days.entries()) {
    for (const [number, { opens }] of SETS.entries())
      if (opens === index) sets.set(number, await issue(filling, tutor.id, first!.id, number, dayOf));
    for (const practising of everybody) {
      const records = practiseDay(desk.course, practising, day);
      clock.at = (records.at(-1)?.at ?? day) + 1000;
      // As if each of these questions had been issued to them.
      const proofs = new Map(records.map((record) => [record, { source: 'issued', at: record.at } as const]));
      if (records.length > 0) await desk.store.keepAnswers(records, new Map(), proofs, 'person');
    }
    for (const practising of first!.members)
      for (const [number, set] of sets)
        if (workDay(practising, number) === index)
          await workOnPaper(desk, practising, set, Math.min(day + 19 * HOUR, now - 2 * HOUR), clock);
    progress((index + 1) / days.length);
  }
  await overrideOne(filling, tutor.id, sets.get(1)!, dayOf(15) + 9 * HOUR);
}
