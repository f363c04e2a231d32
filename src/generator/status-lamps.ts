/** The two lamps that most drives have: one while it runs, one while it stands. */
import type { Link } from './chains.ts';
import type { Opening } from './opening.ts';
import type { CoilPart } from './parts.ts';
import type { Random } from './random.ts';

/** A contactor has no changeovers, so it has no `pole`. */
type Switching = Pick<CoilPart, 'made' | 'rest'> & Partial<Pick<CoilPart, 'pole'>>;

/** One lamp, or several side by side. */
interface Shown {
  readonly hop: Link;
}

/** On two contacts of what switches the drive, or, where it has changeovers, as often on both legs of one pole. */
export function statusLamps(
  random: Random,
  { board, source }: Pick<Opening, 'board' | 'source'>,
  main: Switching,
  { running, standing }: { readonly running: Shown; readonly standing: Shown },
): void {
  const pair = random.chance(0.5) ? main.pole?.() : undefined;
  board.line(source, 'lamps', [pair?.made ?? main.made(), running.hop]);
  if (pair) board.tail([pair.rest, standing.hop]);
  else board.line(source, 'lamps', [main.rest(), standing.hop]);
}
