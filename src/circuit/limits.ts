/**
 * What one circuit may be at most. Checked before work is done, so that a hostile file costs no more than being
 * counted; every limit that is met is said, with its figure. Real control drawings stay far below them.
 */
export const LIMITS = {
  /** UTF-16 code units of a circuit in the notation or in JSON. */
  characters: 2_000_000,
  lines: 10_000,
  lineLength: 4_000,
  devices: 2_000,
  paths: 4_000,
  stopsOnAPath: 60,
  /** Over all paths. */
  stops: 40_000,
  /** Over all devices. */
  terminals: 20_000,
  /** Mistakes listed; from there on they are only said to be more. */
  problems: 1_000,
  /** A list of acts or faults as text. */
  scenarioCharacters: 20_000,
  acts: 200,
  faults: 20,
} as const;
