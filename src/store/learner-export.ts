import type { Kysely } from 'kysely';
import type { Words } from '../words/index.ts';
import { exportedPapers } from './homework/export-papers.ts';
import { exportedPerson } from './people/person-export.ts';
import { rowsAfter } from './read-entries.ts';
import type { Tables } from './schema.ts';
import type { Store } from './types.ts';

const AT_ONCE = 100;

/** A text that is kept as JSON, as a value; what isn't JSON any more goes out as the text that it is. */
function valueIn(text: string | null): unknown {
  if (text === null) return null;
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}

/** See `Store.exportOf`. Nothing is left out, also not what this version can't read. */
export async function* exportPieces(
  db: Kysely<Tables>,
  store: Pick<Store, 'recallsOf' | 'settingsOf' | 'entriesAfter' | 'issued'>,
  learner: string,
  { words, now }: { readonly words: Words; readonly now: number },
): AsyncGenerator<string> {
  const { history, last } = await store.entriesAfter(learner, 0, 1);
  const head = {
    format: 'polewise-learner-1',
    learner,
    exportedAt: now,
    history,
    person: await exportedPerson(db, learner),
    settings: await store.settingsOf(learner),
    recalls: Object.fromEntries(await store.recallsOf(learner)),
  };
  yield `${JSON.stringify(head).slice(0, -1)},"answers":[`;
  for (let after = 0; after < last; after += AT_ONCE) {
    const rows = await rowsAfter(db, learner, after, Math.min(AT_ONCE, last - after));
    for (const row of rows) {
      const entry = {
        number: row.number,
        arrivedAt: row.arrived_at,
        recordVersion: row.record_version,
        record: valueIn(row.record_json),
        correctedMark: valueIn(row.corrected_mark_json),
        proof: row.proof,
      };
      yield `${row.number === 1 ? '' : ','}\n${JSON.stringify(entry)}`;
    }
  }
  yield `],"issued":${JSON.stringify(await store.issued.all(learner))},"papers":[`;
  let first = true;
  for await (const paper of exportedPapers(db, learner, words, now)) {
    yield `${first ? '' : ','}\n${JSON.stringify(paper)}`;
    first = false;
  }
  yield ']}\n';
}
