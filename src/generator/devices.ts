/** Devices for a drawing, taken one by one: each gets a provisional designation, and hands out its contacts as they are used. */
import type { Colour, ContactSpec, Device, DeviceOf, Rating, Step, Supply } from '../../shared/circuit.ts';
import type { Act } from '../../shared/scenario.ts';
import { auxiliaryRow, numbersAt } from '../circuit/contact-numbers.ts';
import { coilPart, heldBy, hop, mainHops, poleOf, RELAY_DIGITS, TIMER_DIGITS } from './coil-part.ts';
import type {
  ActuatedPart,
  CoilPart,
  ContactorPart,
  InputsPart,
  LatchingPart,
  LoadPart,
  Source,
  Toggle,
} from './parts.ts';
import type { Random } from './random.ts';
import { BUTTON_COLOURS, LAMP_COLOURS, type Meaning, type Purpose, type Sensor } from './vocabulary/index.ts';

type Form = ContactSpec['form'];
type DelayKind = 'on-delay' | 'off-delay';

export interface RelayWish {
  readonly poles: number;
  readonly text?: string;
}

export class DeviceShelf {
  readonly supplies: Supply[] = [];
  protected readonly random: Random;
  private readonly counts = new Map<string, number>();
  private readonly makers: (() => Device | undefined)[] = [];

  constructor(random: Random) {
    this.random = random;
  }

  protected name(letter: string): string {
    const number = (this.counts.get(letter) ?? 0) + 1;
    this.counts.set(letter, number);
    return `-${letter}${number}`;
  }

  protected add(device: Device): void {
    this.makers.push(() => device);
  }

  /** All devices as they stand now; a button's contacts are those that were asked for, and without any it isn't there. */
  devices(): Device[] {
    return this.makers.flatMap((make) => make() ?? []);
  }

  /**
   * A supply with a breaker or a fuse in its pole. `earthed`: its return is bonded; of supplies that must stay isolated from
   * one another at most one may be.
   */
  source(rating: Rating, text: string, earthed: boolean = this.random.chance(0.6)): Source {
    const name = String.fromCharCode(65 + this.supplies.length);
    this.supplies.push({ name, ...rating, earthed, text });
    const protection = this.name('F');
    const amps = this.random.pick([1, 2, 4, 6]);
    const kind = this.random.chance(0.6) ? 'breaker' : 'fuse';
    this.add({ kind, name: protection, poles: 1, amps, text });
    const direct = rating.current === 'DC';
    return {
      name,
      rating,
      feed: [{ device: name, enter: direct ? 'L+' : 'L' }, hop(protection, '1', '2')],
      return: { device: name, enter: direct ? 'L-' : 'N' },
      protection,
    };
  }

  /** A three-phase supply with a breaker in its three poles. `volts` is between two of them. */
  mains(volts: number): { readonly name: string; readonly feeds: readonly (readonly Step[])[] } {
    const name = String.fromCharCode(65 + this.supplies.length);
    this.supplies.push({ name, volts, current: '3AC', earthed: true, text: 'Power' });
    const breaker = this.name('F');
    this.add({ kind: 'breaker', name: breaker, poles: 3, amps: 16, text: 'Power' });
    const feeds = mainHops(breaker, 3).map((pole, phase) => [{ device: name, enter: `L${phase + 1}` }, pole]);
    return { name, feeds };
  }

  /** A relay; which of its poles is used first is random. */
  relay({ rating }: Source, { poles, text }: RelayWish): CoilPart {
    const name = this.name('K');
    this.add({ kind: 'relay', name, poles, rating, ...(text ? { text } : {}) });
    return coilPart(this.random, name, poles, RELAY_DIGITS);
  }

  delay({ rating }: Source, kind: DelayKind, seconds: number, { poles, text }: RelayWish): CoilPart {
    const name = this.name('K');
    this.add({ kind, name, poles, rating, seconds, ...(text ? { text } : {}) });
    return coilPart(this.random, name, poles, TIMER_DIGITS);
  }

  flasher({ rating }: Source, on: number, off: number, { poles, text }: RelayWish): CoilPart {
    const name = this.name('K');
    this.add({ kind: 'flasher', name, poles, rating, on, off, ...(text ? { text } : {}) });
    return coilPart(this.random, name, poles, TIMER_DIGITS);
  }

  latching({ rating }: Source, { poles, text }: RelayWish): LatchingPart {
    const name = this.name('K');
    this.add({ kind: 'latching-relay', name, poles, rating, ...(text ? { text } : {}) });
    return { ...coilPart(this.random, name, poles, RELAY_DIGITS), reset: hop(name, 'B1', 'B2') };
  }

  /** A contactor with a row of auxiliaries, EN 50005 numbers. */
  contactor(
    { rating }: Source,
    makes: number,
    breaks: number,
    { mains, text }: { readonly mains: number; readonly text?: string },
  ): ContactorPart {
    const name = this.name('K');
    const contacts = auxiliaryRow(makes, breaks);
    this.add({ kind: 'contactor', name, mains, contacts, rating, ...(text ? { text } : {}) });
    const free = this.random.shuffle(contacts);
    const take = (form: Form) => (): Step => {
      const at = free.findIndex((spec) => spec.form === form);
      if (at < 0) throw new RangeError(`${name} has no ${form} contact left`);
      const [spec] = free.splice(at, 1);
      return hop(name, spec!.terminals[0]!, spec!.terminals[1]!);
    };
    return {
      name,
      coil: hop(name, 'A1', 'A2'),
      mains: Array.from({ length: mains }, (_, pole) =>
        hop(name, String(2 * pole + 1), String(2 * pole + 2)),
      ),
      made: take('make'),
      rest: take('break'),
      held: heldBy(name),
    };
  }

  private actuated(
    name: string,
    make: (contacts: ContactSpec[]) => Device,
    toggle: (first: Form) => Toggle,
  ): ActuatedPart {
    const contacts: ContactSpec[] = [];
    const next = (form: Form): string[] => {
      const terminals = numbersAt(form, contacts.length + 1);
      contacts.push({ form, terminals });
      return terminals;
    };
    const plain = (form: Form) => (): Step => {
      const [from, to] = next(form);
      return hop(name, from!, to!);
    };
    this.makers.push(() => (contacts.length > 0 ? make(contacts) : undefined));
    return {
      name,
      made: plain('make'),
      rest: plain('break'),
      pole: () => poleOf(name, next('changeover') as [string, string, string]),
      get toggle() {
        return toggle(contacts[0]?.form ?? 'make');
      },
    };
  }

  /** A contact in the field; `make` and `break` of the scenario go by its first contact. */
  sensor(kind: Sensor, text: string): ActuatedPart {
    const name = this.name('B');
    return this.actuated(
      name,
      (contacts) => ({ kind, name, text, contacts }),
      (first) => {
        const make: Act = { kind: 'make', device: name };
        const brk: Act = { kind: 'break', device: name };
        return first === 'break'
          ? { on: brk, off: make, springs: false }
          : { on: make, off: brk, springs: false };
      },
    );
  }

  button(text: string, purpose: Purpose): ActuatedPart {
    const name = this.name('S');
    const colour = this.random.pick(BUTTON_COLOURS[purpose]);
    return this.actuated(
      name,
      (contacts) => ({ kind: 'push-button', name, text, colour, contacts }),
      () => ({ on: { kind: 'press', device: name }, off: { kind: 'release', device: name }, springs: true }),
    );
  }

  emergencyStop(text: string): ActuatedPart {
    const name = this.name('S');
    return this.actuated(
      name,
      (contacts) => ({ kind: 'emergency-stop', name, text, contacts }),
      () => ({ on: { kind: 'press', device: name }, off: { kind: 'release', device: name }, springs: false }),
    );
  }

  /** A selector with one make contact for each of the given sets of positions. */
  selector(text: string, positions: readonly string[], makes: readonly (readonly string[])[]) {
    const name = this.name('S');
    const contacts: ContactSpec[] = makes.map((closed, index) => ({
      form: 'make',
      terminals: numbersAt('make', index + 1),
      positions: [...closed],
    }));
    this.add({ kind: 'selector', name, text, positions: [...positions], contacts });
    return {
      name,
      hops: contacts.map(({ terminals }) => hop(name, terminals[0]!, terminals[1]!)),
      turn: (to: string): Act => ({ kind: 'turn', device: name, to }),
    };
  }

  overload(text: string): {
    readonly name: string;
    readonly mains: readonly Step[];
    readonly rest: Step;
    readonly made: Step;
    readonly toggle: Toggle;
  } {
    const name = this.name('F');
    this.add({ kind: 'overload', name, text });
    return {
      name,
      mains: mainHops(name, 3),
      rest: hop(name, '95', '96'),
      made: hop(name, '97', '98'),
      toggle: { on: { kind: 'trip', device: name }, off: { kind: 'reset', device: name }, springs: false },
    };
  }

  lamp({ rating }: Source, text: string, meaning: Meaning): LoadPart {
    const name = this.name('H');
    const colour: Colour = this.random.pick(LAMP_COLOURS[meaning]);
    this.add({ kind: 'lamp', name, text, colour, rating });
    return { name, hop: hop(name, 'X1', 'X2') };
  }

  sounder({ rating }: Source, text: string): LoadPart {
    const name = this.name('H');
    this.add({ kind: 'sounder', name, text, rating });
    return { name, hop: hop(name, 'X1', 'X2') };
  }

  valve({ rating }: Source, text: string): LoadPart {
    const name = this.name('Y');
    this.add({ kind: 'valve', name, text, rating });
    return { name, hop: hop(name, 'A1', 'A2') };
  }

  motor(text: string, volts: number, terminals: DeviceOf<'motor'>['terminals']): string {
    const name = this.name('M');
    this.add({ kind: 'motor', name, text, volts, terminals });
    return name;
  }

  /** Inputs of a controller; the module grows with the points that are asked of it. */
  inputs(source: Source, type: DeviceOf<'inputs'>['type']): InputsPart {
    const name = this.name('A');
    const points: string[] = [];
    const spare = this.random.int(0, 2);
    this.makers.push(() => ({
      kind: 'inputs',
      name,
      text: 'Controller inputs',
      type,
      count: Math.min(16, points.length + spare),
      points,
    }));
    return {
      source,
      next: (text) => {
        points.push(text);
        const point = { device: name, enter: `I${points.length}` };
        // The first point leads on to the module's common and so to the return; the others share that.
        return points.length === 1 ? { ...point, leave: 'COM' } : point;
      },
    };
  }
}
