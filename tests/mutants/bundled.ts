/** Where the bundled tests of a folder lie, and which they are. */
export const BUNDLED = { folder: 'bundled', list: 'bundled/tests.json' } as const;
