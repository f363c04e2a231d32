/** Marks papers one after another, after their submission was acknowledged. */
export class Marker {
  private last: Promise<void> = Promise.resolve();
  private stopped = false;
  private readonly onFault: (error: unknown) => void;

  constructor(onFault: (error: unknown) => void) {
    this.onFault = onFault;
  }

  /**
   * Does this when what was asked for before is done. It may be forgotten: whoever looks at a paper that isn't marked marks
   * it. What goes wrong is told and keeps nothing else from being done.
   */
  later(work: () => Promise<void>): void {
    this.last = this.last.then(() => (this.stopped ? undefined : work())).catch(this.onFault);
  }

  /** Resolves when what is being done is done; what waits is forgotten. */
  async stop(): Promise<void> {
    this.stopped = true;
    await this.last;
  }
}
