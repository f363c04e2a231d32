/** Papers: made when they are wanted, each on circuits that nobody else has. */
import { randomBytes } from 'node:crypto';
import type { Paper } from '../../../shared/homework.ts';
import { CODE_BYTES, codeOf } from '../../homework/index.ts';
import { type HomeworkStore, type KeptSet, newId, type PaperHead } from '../../store/index.ts';
import type { Asking } from '../people/gate.ts';
import { ApiFailure } from '../problems.ts';
import { isPast, soon } from '../turns.ts';
import { checkIssued, tutorsSet } from './access.ts';
import { type Desk, workFor } from './desk.ts';

/** How often a paper is made anew because others took its circuits meanwhile. */
const TRIES = 25;
/** Milliseconds for which one request goes on making papers. */
const MAKING = 1000;

/** The circuits of a set's papers, looked up once and again when somebody else turned out to have taken one. */
class Circuits {
  private readonly homework: HomeworkStore;
  private readonly set: string;
  private readonly places = new Map<number, Set<string>>();

  constructor(homework: HomeworkStore, set: string) {
    this.homework = homework;
    this.set = set;
  }

  async look(): Promise<void> {
    for (const [place, circuits] of await this.homework.circuitsIn(this.set))
      this.places.set(place, new Set(circuits));
  }

  add({ items }: Paper): void {
    items.forEach(({ circuit }, place) => {
      const known = this.places.get(place);
      if (known) known.add(circuit);
      else this.places.set(place, new Set([circuit]));
    });
  }

  /** By place. */
  get taken(): ReadonlyMap<number, ReadonlySet<string>> {
    return this.places;
  }
}

async function make(
  desk: Desk,
  { set }: KeptSet,
  learner: string,
  attempt: number,
  circuits: Circuits,
): Promise<Paper> {
  // What nobody can tell without the secret of the installation; everything on the paper follows from it.
  const seed = await desk.store.people.installation.keyed('seat', `${set.id}|${learner}|${attempt}`);
  const seat = { learner, attempt, seed: seed.toString('hex') };
  const made = await workFor(desk, set.id, 'makePaper', { set, seat, taken: circuits.taken });
  if (made.ok) return made.value;
  throw new ApiFailure({ says: 'too-few-circuits', problems: made.problems.slice(0, 1) });
}

/**
 * A learner's paper for one attempt, new or the one that somebody else made meanwhile. Two who make papers of a set at the
 * same time can hit upon the same circuit: the later one finds another.
 */
async function makePaper(
  desk: Desk,
  kept: KeptSet,
  learner: string,
  attempt: number,
  circuits: Circuits,
): Promise<PaperHead> {
  for (let tries = 0; tries < TRIES; tries++) {
    const paper = await make(desk, kept, learner, attempt, circuits);
    const code = codeOf(randomBytes(CODE_BYTES));
    const result = await desk.store.homework.keepPaper({ id: newId(), code, paper, whose: 'person' });
    if (result.result === 'made') circuits.add(paper);
    if (result.result === 'made' || result.result === 'already') return result.head;
    await circuits.look();
  }
  throw new ApiFailure({ says: 'too-busy.papers' });
}

/** One learner's paper for one attempt, where it isn't there yet. */
export async function paperOf(
  desk: Desk,
  kept: KeptSet,
  learner: string,
  attempt: number,
): Promise<PaperHead> {
  const circuits = new Circuits(desk.store.homework, kept.set.id);
  await circuits.look();
  return makePaper(desk, kept, learner, attempt, circuits);
}

/** Learners of the set's class who have no paper of the first attempt, and how many learners there are. */
export async function withoutPaper(
  { store }: Desk,
  kept: KeptSet,
): Promise<{ readonly missing: readonly string[]; readonly of: number }> {
  const members = await store.people.classes.members(kept.class);
  const learners = members.flatMap(({ id, manner }) => (manner === 'learner' ? [id] : []));
  const heads = await store.homework.papersIn([kept.set.id]);
  const there = new Set(heads.flatMap(({ learner, attempt }) => (attempt === 1 ? [learner] : [])));
  return { missing: learners.filter((learner) => !there.has(learner)), of: learners.length };
}

/** A list begun at some place in it, so that several who go through it at once meet seldom. */
function fromAnywhere<T>(list: readonly T[]): readonly T[] {
  const from = Math.floor(Math.random() * list.length);
  return [...list.slice(from), ...list.slice(0, from)];
}

/** Makes papers that are missing for about a second, or so long; to be called until all are made. */
export async function prepareSome(
  desk: Desk,
  asking: Asking,
  id: string,
  milliseconds = MAKING,
): Promise<{ readonly made: number; readonly of: number }> {
  const kept = await tutorsSet(desk, asking, id);
  checkIssued(kept);
  const until = soon(milliseconds);
  const { missing, of } = await withoutPaper(desk, kept);
  const circuits = new Circuits(desk.store.homework, id);
  await circuits.look();
  let made = of - missing.length;
  for (const learner of fromAnywhere(missing)) {
    await makePaper(desk, kept, learner, 1, circuits);
    made++;
    if (isPast(until)) break;
  }
  return { made, of };
}
