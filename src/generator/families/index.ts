/** Every family, the simplest first. */
import type { Family } from '../types.ts';
import { acknowledgedAlarm } from './acknowledged-alarm.family.ts';
import { breakOnly } from './break-only.family.ts';
import { dutyStandby } from './duty-standby.family.ts';
import { flashing } from './flashing.family.ts';
import { healthyRelay } from './healthy-relay.family.ts';
import { interlocked } from './interlocked.family.ts';
import { jog } from './jog.family.ts';
import { lampTest } from './lamp-test.family.ts';
import { makeOnly } from './make-only.family.ts';
import { offDelay } from './off-delay.family.ts';
import { onDelay } from './on-delay.family.ts';
import { permissive } from './permissive.family.ts';
import { pumpOut } from './pump-out.family.ts';
import { relayChain } from './relay-chain.family.ts';
import { sealIn } from './seal-in.family.ts';
import { starDelta } from './star-delta.family.ts';
import { statusPair } from './status-pair.family.ts';
import { twoHand } from './two-hand.family.ts';
import { twoOutOfThree } from './two-out-of-three.family.ts';
import { twoSupplies } from './two-supplies.family.ts';

export const families: readonly Family[] = [
  makeOnly,
  breakOnly,
  statusPair,
  healthyRelay,
  twoSupplies,
  relayChain,
  permissive,
  twoOutOfThree,
  sealIn,
  jog,
  pumpOut,
  interlocked,
  onDelay,
  offDelay,
  flashing,
  lampTest,
  dutyStandby,
  twoHand,
  starDelta,
  acknowledgedAlarm,
];
