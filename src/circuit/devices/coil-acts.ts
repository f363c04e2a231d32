/** Whatever has a coil can be held operated by hand, and stands operated or not. */
export const COIL_VERBS = ['hold', 'free'] as const;
export const COIL_STANDS = ['notOperated', 'operated'] as const;
