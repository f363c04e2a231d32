import { hash, verify } from '@node-rs/argon2';
import { ApiFailure } from '../problems.ts';
import { FairQueue } from '../work/fair-queue.ts';

/** What one hash costs. */
export interface HashCost {
  /** KiB. */
  readonly memoryCost: number;
  readonly timeCost: number;
  readonly parallelism: number;
}

/** Argon2id. RFC 9106 leaves the choice to the machine; OWASP's Password Storage Cheat Sheet names this as the least. */
export const USUAL_COST: HashCost = { memoryCost: 19_456, timeCost: 2, parallelism: 1 };

/** Hashes worked out at once: they run beside the server, and must leave room for compressing and reading files. */
const AT_ONCE = 2;
/** Those that may wait, of everybody and of one owner. */
const MOST_WAITING = 4000;
const MOST_OF_ONE = 600;

/** Texts that look alike are one password, however the keyboard put them together. */
const normal = (password: string): string => password.normalize('NFKC');

/** Hashes passwords and holds them against hashes, some at a time. */
export class Passwords {
  private readonly cost: HashCost;
  private readonly nobodys: Promise<string>;
  private running = 0;
  private readonly waiting = new FairQueue<() => void>();

  constructor(cost: HashCost = USUAL_COST) {
    this.cost = cost;
    this.nobodys = hash('nobody has this password', cost);
  }

  /** @param owner - for whom: those who wait take turns */
  hash(password: string, owner = ''): Promise<string> {
    return this.inTurn(owner, () => hash(normal(password), this.cost));
  }

  /**
   * Whether a password is the one of a hash. Where there is no hash it takes as long, and is not: how long a refusal
   * takes doesn't tell whether there is such a person.
   */
  async matches(password: string, known: string | null, owner = ''): Promise<boolean> {
    const against = known ?? (await this.nobodys);
    const right = await this.inTurn(owner, () => verify(against, normal(password)));
    return right && known !== null;
  }

  private async inTurn<T>(owner: string, work: () => Promise<T>): Promise<T> {
    if (this.running >= AT_ONCE) {
      if (this.waiting.size >= MOST_WAITING || this.waiting.waitingOf(owner) >= MOST_OF_ONE)
        throw new ApiFailure({ says: 'too-busy.signingIn' });
      await new Promise<void>((go) => this.waiting.add(owner, go));
    } else this.running++;
    try {
      return await work();
    } finally {
      const next = this.waiting.next();
      if (next) next();
      else this.running--;
    }
  }
}
