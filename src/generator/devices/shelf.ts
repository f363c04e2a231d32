/** Where the devices of a drawing come from, one by one: each gets a provisional designation. */
import type { Colour, Device, Step, Supply } from '../../../shared/circuit.ts';
import type { InputsPart } from '../parts.ts';
import type { Random } from '../random.ts';
import { BUTTON_COLOURS, LAMP_COLOURS, type Meaning, type Purpose } from '../vocabulary/index.ts';

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
  private readonly lampColours = new Map<Meaning, Colour>();
  private readonly buttonColours = new Map<Purpose, Colour>();
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

  /** The colour of what means this: on one drawing always the same. */
  lampColour(meaning: Meaning): Colour {
    const colour = this.lampColours.get(meaning) ?? this.random.pick(LAMP_COLOURS[meaning]);
    this.lampColours.set(meaning, colour);
    return colour;
  }

  /** The colour of buttons for this purpose: on one drawing always the same, and another than those for anything else. */
  buttonColour(purpose: Purpose): Colour {
    const known = this.buttonColours.get(purpose);
    if (known) return known;
    const taken = new Set(this.buttonColours.values());
    const free = BUTTON_COLOURS[purpose].filter((colour) => !taken.has(colour));
    const colour = this.random.pick(free.length > 0 ? free : BUTTON_COLOURS[purpose]);
    this.buttonColours.set(purpose, colour);
    return colour;
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
