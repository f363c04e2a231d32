/** Every misconception, the most elementary first. */
import { blockingContactOverlooked } from './blocking-contact-overlooked.misconception.ts';
import { bothLegsClosed } from './both-legs-closed.misconception.ts';
import { breakNeverOpens } from './break-never-opens.misconception.ts';
import { commonReference } from './common-reference.misconception.ts';
import { contactsBesideCoil } from './contacts-beside-coil.misconception.ts';
import { delayAddsUp } from './delay-adds-up.misconception.ts';
import { delaysExchanged } from './delays-exchanged.misconception.ts';
import { firstPoleOnly } from './first-pole-only.misconception.ts';
import { inputInverted } from './input-inverted.misconception.ts';
import { latchDropsOut } from './latch-drops-out.misconception.ts';
import { lineSideDead } from './line-side-dead.misconception.ts';
import { makeForBreak } from './make-for-break.misconception.ts';
import { normalIsRunning } from './normal-is-running.misconception.ts';
import { nothingMoves } from './nothing-moves.misconception.ts';
import { oneSupply } from './one-supply.misconception.ts';
import { openContactFollowed } from './open-contact-followed.misconception.ts';
import { remembersOverLoss } from './remembers-over-loss.misconception.ts';
import { returnIgnored } from './return-ignored.misconception.ts';
import { sealForgotten } from './seal-forgotten.misconception.ts';
import { sealWhereNone } from './seal-where-none.misconception.ts';
import { secondRelayAsDrawn } from './second-relay-as-drawn.misconception.ts';
import { timersInstant } from './timers-instant.misconception.ts';
import type { Misconception } from './types.ts';

export const MISCONCEPTIONS: readonly Misconception[] = [
  nothingMoves,
  makeForBreak,
  breakNeverOpens,
  bothLegsClosed,
  openContactFollowed,
  blockingContactOverlooked,
  secondRelayAsDrawn,
  contactsBesideCoil,
  firstPoleOnly,
  sealForgotten,
  sealWhereNone,
  remembersOverLoss,
  timersInstant,
  delaysExchanged,
  delayAddsUp,
  latchDropsOut,
  oneSupply,
  lineSideDead,
  commonReference,
  returnIgnored,
  inputInverted,
  normalIsRunning,
];
