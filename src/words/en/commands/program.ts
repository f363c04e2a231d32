/** What the program says of itself, and when something in it goes wrong. */
export const program = {
  description: 'Practice in reading control circuits: fresh circuits, marked by an exact solver.',
  options: { version: 'show which version this is', help: 'show this help' },
  help: 'show the help of a command',
  caution: 'It teaches reading drawings and is no instruction to work on live equipment.',
  fault: (told: string) => `A fault in polewise itself: ${told}`,
  reportIt: 'Please report it with what you did; POLEWISE_TRACE=1 shows where.',
};
