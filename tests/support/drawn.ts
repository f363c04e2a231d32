/**
 * How many circuits tests draw at random. Where changes of the code are met by tests one after the other (tests/mutants), each
 * draws a small part of them (`POLEWISE_DRAWN`, a share): a change that any circuit in fifty shows is noticed all the same.
 */
const SHARE = Number(process.env['POLEWISE_DRAWN'] ?? 1);

/** So many, or the part of them that is drawn. */
export const drawn = (count: number): number => Math.ceil(count * SHARE);

/** At least so many of those drawn have to be of some sort; none where only a part is drawn. */
export const atLeast = (count: number): number => (SHARE < 1 ? -1 : count);
