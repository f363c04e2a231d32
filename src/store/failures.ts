/** What goes wrong with a store although the program is right. */
import type { StoreWords } from '../words/en/store.ts';
import type { StatementOf } from '../words/statement.ts';

export type StoreFailureCode =
  | 'no-store'
  | 'not-a-store'
  | 'store-from-later'
  | 'store-unreachable'
  | 'store-full'
  | 'store-busy'
  | 'store-read-only'
  | 'store-damaged'
  | 'file-exists'
  | 'no-such-folder';

/** What went wrong, to be told with what helps. */
export type StoreFailureSaid = StatementOf<StoreWords['failures']['wrong']>;

export class StoreFailure extends Error {
  readonly code: StoreFailureCode;
  readonly said: StoreFailureSaid;
  /** What the database said, for whoever runs it: it may name users and paths. */
  readonly detail: string;

  constructor(code: StoreFailureCode, said: StoreFailureSaid, cause?: unknown) {
    super(code, { cause });
    this.code = code;
    this.said = said;
    this.detail = cause instanceof Error ? cause.message : '';
  }
}

/** Nothing is there, where only something that is there was wanted. */
export const noStore = (): StoreFailure => new StoreFailure('no-store', { says: 'noStore' });

/** Codes of the two databases, by how they begin, and what they mean here. SQLite: sqlite.org/rescode.html; PostgreSQL: appendix A of its manual. */
const MEANINGS: readonly (readonly [
  prefixes: readonly string[],
  code: StoreFailureCode,
  said: StoreFailureSaid,
])[] = [
  [['SQLITE_NOTADB'], 'not-a-store', { says: 'notAStore' }],
  [['SQLITE_FULL', '53100'], 'store-full', { says: 'full' }],
  [
    ['SQLITE_BUSY', 'SQLITE_LOCKED', '55P03', '40001', '40P01', '53300', '57014', '25P03'],
    'store-busy',
    { says: 'busy' },
  ],
  [
    ['SQLITE_READONLY', 'SQLITE_PERM', 'SQLITE_AUTH', '25006', '42501'],
    'store-read-only',
    { says: 'readOnly' },
  ],
  [['SQLITE_CORRUPT', 'XX001', 'XX002'], 'store-damaged', { says: 'damaged' }],
  [
    [
      'SQLITE_CANTOPEN',
      'SQLITE_IOERR',
      'ENOENT',
      'EACCES',
      'EPERM',
      'ENOTDIR',
      'EEXIST',
      'EROFS',
      'ECONNREFUSED',
      'ECONNRESET',
      'EPIPE',
      'ENOTFOUND',
      'EAI_AGAIN',
      'ERR_INVALID_URL',
      'ETIMEDOUT',
      'EHOSTUNREACH',
      '08',
      '28',
      '3D000',
      '57P',
      '53',
    ],
    'store-unreachable',
    { says: 'unreachable' },
  ],
];

/** Texts of pg for connections that are lost or never come, which carry no code. */
const LOST =
  /connection terminated|timeout exceeded when trying to connect|connection error and is not queryable|query read timeout/i;

/** The failure that an exception of a database means; null when it is a fault of this program. */
export function failureOf(error: unknown): StoreFailure | null {
  if (error instanceof StoreFailure) return error;
  if (error instanceof AggregateError && error.errors.length > 0) return failureOf(error.errors[0]);
  if (!(error instanceof Error)) return null;
  const given = 'code' in error ? error.code : undefined;
  const code = typeof given === 'string' ? given : LOST.test(error.message) ? '08' : '';
  const meaning = MEANINGS.find(
    ([prefixes]) => code !== '' && prefixes.some((prefix) => code.startsWith(prefix)),
  );
  if (!meaning) return null;
  const [, kind, said] = meaning;
  return new StoreFailure(kind, said, error);
}

/** A database that isn't there now and may be soon: not started yet, starting, stopping, full of connections, out of reach. */
const AWAY = [
  'ECONNREFUSED',
  'ECONNRESET',
  'EPIPE',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ETIMEDOUT',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'ENOENT',
  '08',
  '57P',
  '53300',
];

/** Whether waiting may help: the address may be right, and nobody has refused anything. */
export function isAway(error: unknown): boolean {
  if (error instanceof StoreFailure) return isAway(error.cause);
  if (error instanceof AggregateError && error.errors.length > 0) return error.errors.every(isAway);
  if (!(error instanceof Error)) return false;
  const code = 'code' in error && typeof error.code === 'string' ? error.code : '';
  return LOST.test(error.message) || (code !== '' && AWAY.some((prefix) => code.startsWith(prefix)));
}
