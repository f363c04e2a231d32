/** Seconds until the next try, doubling from here. */
const FIRST = 2;

/**
 * Something that is done whenever it is wanted, one round at a time; where it came to nothing again later, after twice as long
 * each time.
 */
export class Rounds<R> {
  private readonly work: () => Promise<R>;
  /** Whether a round that ended so has to be done again. */
  private readonly again: (result: R) => boolean;
  /** Seconds between two tries at most. */
  private readonly longest: number;
  private running: Promise<R | undefined> | undefined;
  private next: Promise<R | undefined> | undefined;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private pause = FIRST;
  private ended = false;

  constructor(work: () => Promise<R>, again: (result: R) => boolean, longest: number) {
    this.work = work;
    this.again = again;
    this.longest = longest;
  }

  /** A round that begins from now on: what was given while one is under way goes in the next. Undefined once it has ended. */
  run(): Promise<R | undefined> {
    clearTimeout(this.timer);
    if (!this.running) return this.begin();
    const begin = (): Promise<R | undefined> => this.begin();
    this.next ??= this.running.then(begin, begin);
    return this.next;
  }

  /** One in so many milliseconds, where none is wanted before. */
  soon(milliseconds: number): void {
    clearTimeout(this.timer);
    if (this.ended) return;
    this.timer = setTimeout(() => {
      this.run().catch(() => undefined);
    }, milliseconds);
  }

  private begin(): Promise<R | undefined> {
    this.next = undefined;
    this.running = this.round().finally(() => {
      this.running = undefined;
    });
    return this.running;
  }

  private async round(): Promise<R | undefined> {
    if (this.ended) return undefined;
    const result = await this.work();
    const again = this.again(result);
    this.pause = again ? Math.min(this.longest, this.pause * 2) : FIRST;
    if (again) this.soon(this.pause * 1000);
    return result;
  }

  /** From now on there are none; resolves when none is under way any more. */
  async end(): Promise<void> {
    this.ended = true;
    await this.running;
    clearTimeout(this.timer);
  }

  /** There are some again. */
  goOn(): void {
    this.ended = false;
    this.soon(0);
  }
}
