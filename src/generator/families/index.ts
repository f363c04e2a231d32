/** Every family, the simplest first. */
import type { Family } from '../types.ts';
import { breakOnly } from './break-only.family.ts';
import { makeOnly } from './make-only.family.ts';
import { relayChain } from './relay-chain.family.ts';
import { sealIn } from './seal-in.family.ts';
import { statusPair } from './status-pair.family.ts';

export const families: readonly Family[] = [makeOnly, breakOnly, statusPair, relayChain, sealIn];
