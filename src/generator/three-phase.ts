/** Power circuits. */

import type { Step } from '../../shared/circuit.ts';
import type { Board } from './board.ts';
import { endOf } from './chains.ts';
import { addMains, addMainsBreaker, addMotor } from './devices/index.ts';
import type { ContactorPart } from './parts.ts';

interface StarDelta {
  readonly main: ContactorPart;
  readonly star: ContactorPart;
  readonly delta: ContactorPart;
  /** Main poles of the overload relay. */
  readonly overload: readonly Step[];
}

const WINDINGS = ['U', 'V', 'W'] as const;

/** Between two phases. */
const LINE_VOLTS = 400;
/** Of a winding in star on them. */
const STAR_VOLTS = 230;

/**
 * A motor of 400 V a winding on 400 V between phases: both ends of each winding are led out, star or delta joins them.
 *
 * @returns the supply's name
 */
export function starDeltaMotor(
  board: Board,
  thing: string,
  { main, star, delta, overload }: StarDelta,
): string {
  const mains = addMains(board, LINE_VOLTS);
  const feeds = addMainsBreaker(board, mains, { amps: 16, text: 'Power' });
  const motor = addMotor(board, thing, LINE_VOLTS, 6);
  const starPoint = endOf(star.mains[0]!);
  const windings = WINDINGS.map((winding) => ({
    device: motor,
    enter: `${winding}1`,
    leave: `${winding}2`,
  }));
  const lines = feeds.map((feed, phase): readonly Step[] => [
    ...feed,
    main.mains[phase]!,
    overload[phase]!,
    windings[phase]!,
    star.mains[phase]!,
    ...(phase > 0 ? [phase === 1 ? starPoint : endOf(star.mains[phase - 1]!)] : []),
  ]);
  // Delta joins each phase to the far end of another winding: L1 to W2, L2 to U2, L3 to V2.
  // Its line side is taken from before the main contactor or from behind it: both are built (common practice, no source).
  const behind = board.random.chance(0.5);
  const closing = feeds.map(([, breaker], phase): readonly Step[] => [
    endOf(behind ? main.mains[phase]! : breaker),
    delta.mains[phase]!,
    endOf(windings[(phase + 2) % 3]!),
  ]);
  board.power([...lines, ...closing]);
  return mains;
}

/** A small motor straight on the line, its windings joined in star inside it, with a breaker of its own on the same supply. */
export function directMotor(
  board: Board,
  mains: string,
  thing: string,
  { contactor, overload }: { readonly contactor: ContactorPart; readonly overload: readonly Step[] },
): void {
  const feeds = addMainsBreaker(board, mains, { amps: 6, text: thing });
  const motor = addMotor(board, thing, STAR_VOLTS, 3);
  board.power(
    feeds.map((feed, phase) => [
      ...feed,
      contactor.mains[phase]!,
      overload[phase]!,
      { device: motor, enter: `${WINDINGS[phase]}1` },
    ]),
  );
}
