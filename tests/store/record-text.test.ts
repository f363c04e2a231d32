/** Records written once are read for ever: one of each version is kept here as it was written. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RECORD_VERSION, readRecord, writeRecord } from '../../src/store/record-text.ts';
import { store } from '../../src/words/en/store.ts';
import { say } from '../../src/words/statement.ts';
import { answerWith, MORNING } from '../support/answers.ts';

const folder = new URL('./records/', import.meta.url);

describe('the text of a record', () => {
  it('is kept here in every version there was', () => {
    const versions = Array.from({ length: RECORD_VERSION }, (_, at) => `version-${at + 1}.json`);
    expect(readdirSync(folder).sort()).toEqual(versions);
  });

  it.each(Array.from({ length: RECORD_VERSION }, (_, at) => at + 1))(
    'of version %i is read, now and ever after (if not: raise RECORD_VERSION and add a step)',
    (version) => {
      const text = readFileSync(new URL(`version-${version}.json`, folder), 'utf8');
      expect(readRecord(text, version)).toMatchObject({
        ok: true,
        record: { id: `kept-in-version-${version}` },
      });
    },
  );

  it('comes back as it was written', () => {
    const record = answerWith({ id: 'one', at: MORNING, share: 0.5 });
    expect(readRecord(writeRecord(record), RECORD_VERSION)).toEqual({ ok: true, record });
  });

  it('that is none says why', () => {
    const toldOf = (text: string, version = RECORD_VERSION): string => {
      const read = readRecord(text, version);
      return read.ok ? '' : say(store.unreadable, read.why);
    };
    expect(toldOf('null')).toBe('At the top: this has to be an object.');
    expect(toldOf('{"id":3}')).toBe('At id: this has to be a string.');
    expect(toldOf('{')).toBe('Its text is not JSON, or not of the form it is said to have.');
    expect(toldOf('{}', RECORD_VERSION + 1)).toBe(
      `It was written by a later version (form ${RECORD_VERSION + 1}, known ${RECORD_VERSION}).`,
    );
  });
});
