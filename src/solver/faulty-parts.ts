import type { Fault } from '../../shared/scenario.ts';

type OfDevice = Extract<Fault, { device: string }>['kind'];
type Between = Extract<Fault, { from: string; to: string }>['kind'];

/** The faults of a scenario, asked for by the part that has them. */
export class FaultyParts {
  private readonly faults: readonly Fault[];

  constructor(faults: readonly Fault[]) {
    this.faults = faults;
  }

  /** Whether a device has this fault. */
  device(kind: OfDevice, device: string): boolean {
    return this.faults.some((fault) => fault.kind === kind && fault.device === device);
  }

  /** The fault of this kind of what is between two terminals of a device, whichever is named first. */
  between<K extends Between>(
    kind: K,
    device: string,
    from: string,
    to: string,
  ): Extract<Fault, { kind: K }> | undefined {
    if (this.faults.length === 0) return undefined;
    const [one, other] = [`${device}:${from}`, `${device}:${to}`];
    return this.faults.find(
      (fault): fault is Extract<Fault, { kind: K }> =>
        fault.kind === kind &&
        'from' in fault &&
        ((fault.from === one && fault.to === other) || (fault.from === other && fault.to === one)),
    );
  }
}
