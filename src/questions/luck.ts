/**
 * How often somebody who doesn't read the drawing gets a whole answer right, at the most: the one table of it. What floors and
 * surcharges say is what questions are held to: ways of answering without the drawing are measured over thousands of questions,
 * and none may get more whole answers right than this. docs/memory.md prints it and a test holds them equal.
 */

/** What is asked together hangs together: "all dark" is one guess, however many lamps there are. */
const ALIKE = 0.15;
/** The states after several acts hang together less. */
const ALIKE_IN_COURSE = 0.1;
/** How much more often than at random the right one of several choices is found. */
const BY_LOOKS = 0.05;
const READING = 0.2;

/** So many things, each in one of two states at least. */
export const luckWithStates = (asked: number): number => Math.max(ALIKE, 0.5 ** asked);
/** The same, some of them after several acts. */
export const luckWithCourse = (asked: number): number => Math.max(ALIKE_IN_COURSE, 0.5 ** asked);
export const luckWithChoices = (choices: number): number => Math.min(1, 1 / choices + BY_LOOKS);
export const luckWithReading = (): number => READING;
