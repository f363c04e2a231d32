/** What holds the server up, whatever it is asked. */
export const troubles = {
  /** To those who can't do anything about it. */
  storeAway: {
    wrong: (told: string) => `Nothing can be kept or looked up at this moment. ${told}`,
    right:
      'Leave this open and try again in a few minutes: what was acknowledged is kept. If it lasts, tell your tutor, or whoever runs the server.',
  },
};
