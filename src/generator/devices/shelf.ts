/** Where the devices of a drawing come from, one by one: each gets a provisional designation. */
import type { Device, Step, Supply } from '../../../shared/circuit.ts';
import type { InputsPart } from '../parts.ts';
import type { Random } from '../random.ts';

/** Contacts of a device that nothing uses yet. */
export interface Spare {
  /** What moves the contacts: a coil, or somebody and something outside. */
  readonly by: 'coil' | 'outside';
  /** One more contact of this form; undefined when there is none. */
  take(form: 'make' | 'break'): Step | undefined;
}

export class DeviceShelf {
  readonly supplies: Supply[] = [];
  readonly random: Random;
  readonly spares: Spare[] = [];
  readonly inputs: InputsPart[] = [];
  /** Lamps added so far. */
  lamps = 0;
  private readonly counts = new Map<string, number>();
  private readonly makers: (() => Device | undefined)[] = [];

  constructor(random: Random) {
    this.random = random;
  }

  /** The next designation with this letter. */
  name(letter: string): string {
    const number = (this.counts.get(letter) ?? 0) + 1;
    this.counts.set(letter, number);
    return `-${letter}${number}`;
  }

  /** One more device; where it is a function it is asked when the drawing is done, and may know of none. */
  add(device: Device | (() => Device | undefined)): void {
    this.makers.push(typeof device === 'function' ? device : () => device);
  }

  /** The name of one more supply. */
  supplyName(): string {
    return String.fromCharCode(65 + this.supplies.length);
  }

  /** All devices as they stand now; a button's contacts are those that were asked for, and without any it isn't there. */
  devices(): Device[] {
    return this.makers.flatMap((make) => make() ?? []);
  }
}

/** The text beside a device, where it has one. */
export function textOf(
  text: string | ((name: string) => string | undefined) | undefined,
  name = '',
): { readonly text?: string } {
  const said = typeof text === 'function' ? text(name) : text;
  return said ? { text: said } : {};
}
