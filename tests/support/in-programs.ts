import { it } from 'vitest';

/** A test of programs that run beside it. Where code is changed to see whether tests notice, these haven't the change in them. */
export const itInPrograms = it.skipIf(process.env['MUTANTS_TESTS'] !== undefined);
