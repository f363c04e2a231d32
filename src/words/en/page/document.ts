/** What the page says before any script of it runs, and what it is called where it has been installed: written into its files when it is built. */
export const document = {
  description: 'Practice in reading control circuits.',
  noScript: 'Polewise works out every circuit in your browser and needs JavaScript for it.',
  installed: {
    name: 'Polewise: practice in reading control circuits',
    description:
      'Practice in reading control circuits: fresh drawings, marked by an exact solver, brought back before they are forgotten.',
  },
};
export type DocumentWords = typeof document;
