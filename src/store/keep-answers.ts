import type { Kysely, Transaction } from 'kysely';
import type { Attempt, Grade } from '../../shared/memory.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import type { Mark } from '../../shared/question.ts';
import { countsAt, gradeOf } from '../memory/index.ts';
import { inShort } from '../practice/line.ts';
import { partsCounted } from '../practice/parts-counted.ts';
import { chunksOf, groupsOf } from './chunks.ts';
import { updateRecalls } from './derive-recalls.ts';
import { lockHistory } from './lock-history.ts';
import { others } from './others.ts';
import { useProofs } from './proofs.ts';
import { RECORD_VERSION, writeRecord } from './record-text.ts';
import { sameMark } from './same-mark.ts';
import type { Tables } from './schema.ts';
import type { Found, Kept, Proof } from './types.ts';
import type { Whose } from './whose.ts';

/** How answers are kept. */
export interface Keeping {
  readonly found: ReadonlyMap<AnswerRecord, Found>;
  readonly proofs: ReadonlyMap<AnswerRecord, Proof>;
  readonly whose: Whose;
  readonly now: number;
}

interface Numbered {
  readonly record: AnswerRecord;
  readonly number: number;
  /** When it counts as given. */
  readonly at: number;
  /** What counts of it: its own, or what was found instead. */
  readonly circuit: string;
  readonly attempt: Attempt;
  readonly grade: Grade;
  readonly correctedMark: Mark | null;
}

function numbered(record: AnswerRecord, number: number, found: Found | undefined, latest: number): Numbered {
  const at = countsAt(record.at, latest);
  const { circuit, mark } = found ?? record;
  const secondsExpected = found?.secondsExpected ?? record.attempt.secondsExpected;
  const attempt = {
    ...record.attempt,
    share: mark.share,
    parts: partsCounted(record.question, mark),
    secondsExpected,
  };
  return {
    record,
    number,
    at,
    circuit,
    attempt,
    grade: gradeOf(attempt).grade,
    correctedMark: sameMark(mark, record.mark) ? null : mark,
  };
}

/** What the columns say of a mark. */
export function shortColumns(mark: Mark): Pick<Tables['answers'], 'correct' | 'idea'> {
  const { correct, idea } = inShort(mark);
  return { correct: correct ? 1 : 0, idea };
}

/** The numbers of those of these ids that are kept already. */
async function knownOf(
  db: Transaction<Tables>,
  learner: string,
  ids: readonly string[],
): Promise<Map<string, number>> {
  const known = new Map<string, number>();
  for (const some of chunksOf(ids, 500)) {
    const rows = await db
      .selectFrom('answers')
      .select(['id', 'number'])
      .where('learner', '=', learner)
      .where('id', 'in', some)
      .execute();
    for (const { id, number } of rows) known.set(id, number);
  }
  return known;
}

async function insert(
  db: Transaction<Tables>,
  fresh: readonly Numbered[],
  proofs: ReadonlyMap<AnswerRecord, Proof>,
  arrivedAt: number,
): Promise<void> {
  for (const some of chunksOf(fresh, 50)) {
    await db
      .insertInto('answers')
      .values(
        some.map(({ record, number, at, circuit, attempt, grade, correctedMark }) => ({
          learner: record.learner,
          number,
          id: record.id,
          arrived_at: arrivedAt,
          at: record.at,
          counts_at: at,
          skill: record.skill,
          circuit,
          kind: record.question.kind,
          share: attempt.share,
          grade,
          attempt_json: JSON.stringify(attempt),
          record_version: RECORD_VERSION,
          record_json: writeRecord(record),
          corrected_mark_json: correctedMark && JSON.stringify(correctedMark),
          ...shortColumns(correctedMark ?? record.mark),
          proof: proofs.get(record)?.source ?? null,
          proof_at: proofs.get(record)?.at ?? null,
        })),
      )
      .execute();
    await others();
  }
}

/** Keeps what one learner sends; gives a result for each, in order. Numbers follow the order of `records`. */
async function keepOf(
  db: Transaction<Tables>,
  learner: string,
  records: readonly AnswerRecord[],
  { found, proofs, whose, now }: Keeping,
): Promise<readonly Kept[]> {
  const history = await lockHistory(db, learner, whose);
  const { answers } = history;
  const latest = Math.max(now, history.latest);
  const numbers = await knownOf(db, learner, [...new Set(records.map(({ id }) => id))]);
  const fresh: Numbered[] = [];
  const results = records.map((record): Kept => {
    const known = numbers.get(record.id);
    if (known !== undefined) return { kept: false, number: known };
    const number = answers + fresh.length + 1;
    numbers.set(record.id, number);
    fresh.push(numbered(record, number, found.get(record), latest));
    return { kept: true, number };
  });
  if (fresh.length === 0) return results;
  const good = await useProofs(
    db,
    learner,
    fresh.map(({ record }) => record),
    proofs,
  );
  await insert(db, fresh, good, now);
  await db
    .updateTable('histories')
    .set({ answers: answers + fresh.length, latest })
    .where('learner', '=', learner)
    .execute();
  const lines = fresh.map(({ record: { id, skill }, number, at, circuit, attempt }) => ({
    id,
    skill,
    circuit,
    at,
    attempt,
    number,
  }));
  await updateRecalls(db, learner, lines);
  return results;
}

/** Keeps answers of any learners in one transaction, with the recall states that follow; see `Store.keepAnswers`. */
export function keepAnswers(
  db: Kysely<Tables>,
  records: readonly AnswerRecord[],
  keeping: Keeping,
): Promise<readonly Kept[]> {
  return db.transaction().execute(async (transaction) => {
    const places = groupsOf([...records.keys()], (place) => records[place]!.learner);
    const results = new Map<number, Kept>();
    for (const learner of [...places.keys()].sort()) {
      const own = places.get(learner)!;
      const kept = await keepOf(
        transaction,
        learner,
        own.map((place) => records[place]!),
        keeping,
      );
      kept.forEach((result, at) => {
        results.set(own[at]!, result);
      });
    }
    return [...records.keys()].map((place) => results.get(place)!);
  });
}
