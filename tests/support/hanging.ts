/**
 * Milliseconds after which something is taken for hanging. What waits in a test waits for what happens, however slow or
 * busy the machine is; only what never comes is given up.
 */
export const HANGING = 45 * 60_000;
