export const draw = {
  help: {
    summary: 'a circuit as a drawing',
    description:
      'Draws a circuit at rest, or as it stands after acts: as SVG, as PDF, or as text in the terminal.',
    options: {
      output: 'write to this .svg or .pdf; without it the drawing is shown as text',
      acts: 'show the state after these acts',
      steps: 'one picture for each moment on the way',
      sheet: 'only this sheet',
      letters: 'letter codes of designations',
    },
  },
  uncertain: (outcome: string) => `Note: ${outcome}.`,
  noSheet: {
    wrong: (sheet: number) => `There is no sheet ${sheet}.`,
    right: (sheets: readonly number[]) => `Sheets: ${sheets.join(', ')}.`,
  },
  /** What a drawing without a title is called. */
  untitled: 'Control drawing',
};
