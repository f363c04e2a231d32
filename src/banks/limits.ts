/**
 * What one file of a bank, and one bank, may be at most. Checked before work is done, so that a hostile file costs no
 * more than being counted. The Markdown library's work grows with the square of some of these.
 */
export const BANK_LIMITS = {
  files: 500,
  /** UTF-16 code units of one file. */
  characters: 200_000,
  lines: 5_000,
  lineLength: 1_000,
  /** Spaces, list and quote marks at the beginning of a line: what makes things stand in one another. */
  indentation: 24,
  frontMatterCharacters: 20_000,
  /** Brackets that are open at once in the front matter. */
  frontMatterDepth: 20,
  /** Characters of one paragraph, list item or table cell. */
  paragraph: 4_000,
  /** Signs of emphasis in one of them. */
  emphasisSigns: 120,
  /** A lesson's circuit is small: the solver looks at every order in which its relays can move. */
  devicesInACircuit: 120,
  actsInAScenario: 60,
  /**
   * What the solver is asked in one file: devices times acts over all drawings and questions, and `refusedCosts` times as
   * much for each that isn't confirmed, for finding out why takes longest.
   */
  solving: 12_000,
  refusedCosts: 10,
  /** Mistakes listed for one file; from there on they are only said to be more. */
  problems: 200,
} as const;
