/** Drawings and diagrams, shown and written. */
export const pictures = {
  widthOfText: {
    wrong: '--width is for pictures, and text takes the width of the terminal.',
    right: 'Name a file for the picture with --output, or leave out --width.',
  },
  neitherSvgNorPdf: {
    wrong: (file: string) => `${file}: neither .svg nor .pdf.`,
    right: 'Name the file for what it is to be, such as fan.svg.',
  },
  /** What the drawing of a state shows otherwise than one at rest. */
  legend: '█ is on, ▄ dim, ▞ flashes; a heavier line has a voltage against its return.',
  asciiLegend: '# is on, o dim, * flashes; a conductor of # and = has a voltage against its return.',
  step: ({ number, caption }: { number: number; caption: string }) => `${number}. ${caption}`,
  atTheBeginning: 'At the beginning.',
  moreFollows: 'More follows; it is left out here.',
  after: (acts: string) => `After: ${acts}`,
  withTheFault: 'With the fault.',
};
