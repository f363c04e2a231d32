import type { Bank } from '../../shared/bank.ts';
import type { Course } from '../practice/index.ts';
import type { Store } from '../store/index.ts';
import type { Words } from '../words/index.ts';
import type { Guard } from './homework/guard.ts';
import type { Intake } from './intake.ts';
import type { Gate } from './people/gate.ts';
import type { Passwords } from './people/passwords.ts';
import type { Transport } from './people/transport.ts';
import type { Work } from './work/work.ts';

/** What the routes work with. */
export interface Service extends Gate {
  readonly store: Store;
  readonly bank: Bank;
  /** The bank, ready for practising. */
  readonly course: Course;
  /** What is told, in the language of those who read it. */
  readonly words: Words;
  readonly intake: Intake;
  readonly guard: Guard;
  readonly version: string;
  /** Milliseconds since 1970; what opens and closes goes by it. */
  now(): number;
  readonly passwords: Passwords;
  readonly transport: Transport;
  /** Does what takes long, or what others have made up, apart from the thread that answers. */
  readonly work: Work;
  isStopping(): boolean;
}
