/** How most families begin: a plant, an empty board, a control supply. */

import { Board } from './board.ts';
import { pickPlant } from './casting.ts';
import { addLamp, addSource } from './devices/index.ts';
import type { Source } from './parts.ts';
import type { Random } from './random.ts';
import type { Followers } from './readouts.ts';
import { pickControl } from './sources.ts';
import type { Plant } from './vocabulary/index.ts';

export interface Opening {
  readonly plant: Plant;
  readonly board: Board;
  readonly source: Source;
}

/** @param pick - which supply the control circuit has */
export function open(random: Random, pick = pickControl): Opening {
  const board = new Board(random.child('board'));
  const source = addSource(board, pick(random), 'Control supply');
  return { plant: pickPlant(random), board, source };
}

/** Sheets for a drawing of this size: small ones mostly have one. */
export function sheetsFor(random: Random, size: number): number {
  if (size <= 2) return random.chance(0.2) ? 2 : 1;
  if (size <= 4) return random.int(1, 2);
  return random.int(1, 3);
}

/** Relays that follow others on a drawing of this size. */
export const followersFor = (size: number): Followers => ({ count: size >= 5 ? 2 : size >= 3 ? 1 : 0 });

/** A lamp across the control supply, now and then: it is lit whatever the relays do. */
export function maybeSupplyLamp(random: Random, { board, source }: Opening, probability = 0.25): void {
  if (!random.chance(probability)) return;
  const lamp = addLamp(board, source, 'Control supply on', random.pick(['neutral', 'normal']));
  board.line(source, 'lamps', [lamp.hop]);
}
