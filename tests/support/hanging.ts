/**
 * Milliseconds after which something is taken for hanging. What waits in a test waits for what happens, however slow or
 * busy the machine is; only what never comes is given up. A test, or what is made before it, may wait for many things.
 */
export const HANGING = 20 * 60_000;

/** For one thing alone: what a page shows, what a program prints. */
export const NEVER_COMES = 4 * 60_000;
