/** A mark, as it is read in a terminal. */
export const marks = {
  right: 'Right.',
  leftOut: 'Left out. This is right:',
  notRight: 'Not right.',
  partlyRight: ({ right, of }: { right: number; of: number }) => `${right} of ${of} right.`,
  /** Before each part. */
  parts: { right: 'right', wrong: 'wrong', leftOut: 'left out' },
  youSaid: ({ right, given }: { right: string; given: string }) => `${right}, you said ${given}`,
  idea: 'An idea that gives just this answer',
  ideas: 'Either of these ideas gives just this answer',
  why: 'Why',
  story: 'All that happens, in order',
};
