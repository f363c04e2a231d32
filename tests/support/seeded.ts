/**
 * Property tests draw the same cases in every run, so that a change is judged by what it changes. `npm run fuzz` draws
 * new ones and says from which seed; POLEWISE_SEED draws those of a given seed again.
 */
import fc from 'fast-check';

const given = process.env['POLEWISE_SEED'];
const seed = given === 'new' ? Date.now() % 2 ** 31 : Number(given ?? 20_261_125);
if (!Number.isInteger(seed)) throw new Error(`POLEWISE_SEED is a whole number or "new", not "${given}".`);
if (given === 'new') process.stderr.write(`property tests from seed ${seed}\n`);
fc.configureGlobal({ seed });
