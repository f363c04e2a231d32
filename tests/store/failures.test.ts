/** What the databases say when something is wrong, and what is made of it. */
import { describe, expect, it } from 'vitest';
import { isAway, noStore } from '../../src/store/failures.ts';
import { failureOf, StoreFailure } from '../../src/store/index.ts';

const coded = (code: string, message = 'as the database says it'): Error =>
  Object.assign(new Error(message), { code });

describe('an exception of a database', () => {
  // SQLite: sqlite.org/rescode.html; PostgreSQL: its manual, appendix A; system errors: errno(3).
  it.each([
    ['SQLITE_NOTADB', 'not-a-store'],
    ['SQLITE_FULL', 'store-full'],
    ['53100', 'store-full'],
    ['SQLITE_BUSY_SNAPSHOT', 'store-busy'],
    ['40001', 'store-busy'],
    ['53300', 'store-busy'],
    ['SQLITE_READONLY_DBMOVED', 'store-read-only'],
    ['42501', 'store-read-only'],
    ['SQLITE_CORRUPT_INDEX', 'store-damaged'],
    ['XX001', 'store-damaged'],
    ['SQLITE_IOERR_READ', 'store-unreachable'],
    ['ECONNREFUSED', 'store-unreachable'],
    ['08006', 'store-unreachable'],
    ['28P01', 'store-unreachable'],
    ['3D000', 'store-unreachable'],
    ['57P03', 'store-unreachable'],
    ['53200', 'store-unreachable'],
  ])('with the code %s means %s', (code, meaning) => {
    const error = coded(code);
    const failure = failureOf(error)!;
    expect(failure).toBeInstanceOf(StoreFailure);
    expect(failure).toMatchObject({ code: meaning, detail: 'as the database says it', cause: error });
  });

  it('without a code means a lost connection where it says so, and otherwise a fault of the program', () => {
    for (const text of [
      'Connection terminated unexpectedly',
      'timeout exceeded when trying to connect',
      'Client has encountered a connection error and is not queryable',
      'Query read timeout',
    ]) {
      expect(failureOf(new Error(text))?.code).toBe('store-unreachable');
      expect(isAway(new Error(text))).toBe(true);
    }
    for (const other of [new Error('no such column'), coded('42703'), coded(''), 'ECONNREFUSED', null]) {
      expect(failureOf(other)).toBeNull();
      expect(isAway(other)).toBe(false);
    }
    expect(failureOf(Object.assign(new Error('odd'), { code: 8 }))).toBeNull();
  });

  it('of several means what the first means, and a failure means itself', () => {
    expect(failureOf(new AggregateError([coded('SQLITE_FULL'), coded('ECONNREFUSED')]))?.code).toBe(
      'store-full',
    );
    expect(failureOf(new AggregateError([]))).toBeNull();
    const known = noStore();
    expect(failureOf(known)).toBe(known);
    expect(known).toMatchObject({ code: 'no-store', said: { says: 'noStore' }, detail: '' });
  });
});

describe('a database that may come back', () => {
  it('is one that refuses nothing: not started, starting, stopping, full of connections, out of reach', () => {
    for (const code of ['ECONNREFUSED', 'ENETUNREACH', 'ETIMEDOUT', '08001', '57P01', '53300'])
      expect(isAway(coded(code)), code).toBe(true);
    for (const code of ['28P01', '3D000', '53100', 'SQLITE_FULL', 'EACCES'])
      expect(isAway(coded(code)), code).toBe(false);
  });

  it('is told by the cause of a failure, and where several addresses were tried by all of them', () => {
    expect(isAway(failureOf(coded('ECONNREFUSED')))).toBe(true);
    expect(isAway(failureOf(coded('28P01')))).toBe(false);
    expect(isAway(noStore())).toBe(false);
    const refused = coded('ECONNREFUSED');
    expect(isAway(new AggregateError([refused, coded('ENETUNREACH')]))).toBe(true);
    expect(isAway(new AggregateError([refused, coded('28P01')]))).toBe(false);
    expect(isAway(new AggregateError([]))).toBe(false);
  });
});
