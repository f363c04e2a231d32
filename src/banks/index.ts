/** Question banks: Markdown files become topics with lessons, skills, recipes and questions, or every mistake in them is told. */
export { BANK_LIMITS } from './limits.ts';
export { BANK_CODES } from './problem-codes.ts';
export { type ReadBankOptions, readBank } from './read-bank.ts';
export { readTopic } from './read-topic.ts';
export type { BankFile } from './source.ts';
