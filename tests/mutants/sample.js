/**
 * Leaves all but every so manieth mutant out (`--of`), for folders that have thousands: which, follows from what is changed
 * and where, so that the next run takes the same. JavaScript, since the process that loads it knows nothing else.
 */
import { createHash } from 'node:crypto';

const of = Number(process.env['MUTANTS_OF'] ?? 1);

/**
 * A mutant of Stryker, as far as it is looked at.
 * @typedef {{ id: string, fileName: string, location: unknown, mutatorName: string, replacement: string }} Mutant
 */

/** @param {Mutant} mutant */
const taken = ({ fileName, location, mutatorName, replacement }) =>
  createHash('sha256')
    .update(JSON.stringify([fileName.replace(/^.*\/(?=src\/)/, ''), location, mutatorName, replacement]))
    .digest()
    .readUInt32BE() %
    of ===
  0;

const sample = () => ({
  init: async () => {},
  /** @param {Mutant[]} mutants */
  check: async (mutants) =>
    Object.fromEntries(
      mutants.map((mutant) => [
        mutant.id,
        taken(mutant) ? { status: 'passed' } : { status: 'compileError', reason: 'not in the sample' },
      ]),
    ),
});

export const strykerPlugins = [{ kind: 'Checker', name: 'sample', factory: sample }];
