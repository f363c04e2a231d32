import type { FastifyRequest } from 'fastify';
import type { Bank } from '../../shared/bank.ts';
import type { Store } from '../store/index.ts';
import type { Intake } from './intake.ts';

/** What the routes work with. */
export interface Service {
  readonly store: Store;
  readonly bank: Bank;
  readonly intake: Intake;
  readonly version: string;
  /** Who asks. */
  learnerOf(request: FastifyRequest): string;
  isStopping(): boolean;
}
