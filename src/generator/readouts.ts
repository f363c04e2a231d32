/**
 * Lamps and inputs that mean nothing by themselves. Those of a family say what they are for, and whoever knows what was done
 * can answer from the words; which contact these hang on only the drawing tells, and with them there are enough that no pattern
 * is guessed.
 */
import type { Step } from '../../shared/circuit.ts';
import type { Board } from './board.ts';
import { type Chain, either } from './chains.ts';
import { addLamp, addRelay } from './devices/index.ts';
import type { Spare } from './devices/shelf.ts';
import type { Source } from './parts.ts';
import type { Random } from './random.ts';

export type Legs = readonly ('make' | 'break')[];

/** Added to those that a family has, so that there are four or more: guessed once in sixteen where they don't hang together. */
const ADDED = { least: 2, most: 3 };
/** A drawing that has so many of its own gets one more, so that words never tell all. */
const MANY = 8;

/** Takes contacts that are left, of one device after another. */
class Left {
  private readonly random: Random;
  private readonly spares: readonly Spare[];
  private readonly legs: Legs;
  /** Relays that are there for these lamps alone: their contacts go first, so that none is left without one. */
  private readonly first: Set<Spare>;

  constructor(random: Random, spares: readonly Spare[], legs: Legs, first: readonly Spare[] = []) {
    this.random = random;
    this.spares = spares;
    this.legs = legs;
    this.first = new Set(first);
  }

  /** A contact of another device than those before it in the chain: make and break of one never close together. */
  private of(spares: readonly Spare[], before?: Spare): { step: Step; spare: Spare } | undefined {
    for (const spare of this.random.shuffle(spares)) {
      if (spare === before) continue;
      for (const form of this.random.shuffle(this.legs)) {
        const step = spare.take(form);
        if (!step) continue;
        this.first.delete(spare);
        return { step, spare };
      }
    }
    return undefined;
  }

  private readonly coils = (): Spare[] => this.spares.filter(({ by }) => by === 'coil');

  /** A contact of a relay. */
  contact(): Step | undefined {
    return (this.of([...this.first]) ?? this.of(this.coils()))?.step;
  }

  /** One contact of a relay, or two in series or side by side, the other one a button's or a field contact's now and then. */
  chain(): Chain {
    const one = this.of([...this.first]) ?? this.of(this.coils()) ?? this.of(this.spares);
    if (!one) return [];
    const others = this.random.chance(0.4) ? this.spares : this.coils();
    const other = this.random.chance(0.35) ? this.of(others, one.spare) : undefined;
    if (!other) return [one.step];
    return this.random.chance(0.6) ? [one.step, other.step] : [either([one.step], [other.step])];
  }
}

const missing = (random: Random, there: number): number =>
  there >= MANY ? 1 : random.int(ADDED.least, ADDED.most);

/** The supply that the family's lamps are on. */
const lampSource = ({ groups }: Board): Source | undefined =>
  groups.findLast(({ zone }) => zone === 'lamps')?.source;

const controlSource = ({ groups }: Board): Source | undefined =>
  groups.find(({ zone }) => zone === 'control')?.source;

/** Relays that follow others, each one the one before it: what hangs on them is read over as many relays more. */
function addFollowers(
  leftWith: (first: readonly Spare[]) => Left,
  board: Board,
  source: Source,
  { count, text }: Followers,
): void {
  for (let added = 0; added < count; added++) {
    const chain = leftWith(added > 0 ? board.spares.slice(-1) : []).chain();
    if (chain.length === 0) return;
    const relay = addRelay(board, source, { poles: 2, ...(text ? { text } : {}) });
    board.line(source, 'control', [...chain, relay.coil]);
  }
}

/** Relays between the family's own and some of them. */
export interface Followers {
  readonly count: number;
  /** Beside the relay of this name, when the drawing is done. */
  readonly text?: (name: string) => string | undefined;
}

export interface ReadoutWishes {
  /** The legs that they may hang on. */
  readonly legs: Legs;
  readonly followers: Followers;
}

export function addReadouts(random: Random, board: Board, { legs, followers }: ReadoutWishes): void {
  const source = lampSource(board);
  if (!source) return;
  // A button or a field contact stays on the one supply that it has.
  const shared = source === controlSource(board);
  const ofCoils = (): Left =>
    new Left(
      random,
      board.spares.filter(({ by }) => by === 'coil'),
      legs,
    );
  const ofAll = (first: readonly Spare[] = []): Left =>
    new Left(random, shared ? board.spares : board.spares.filter(({ by }) => by === 'coil'), legs, first);
  const own = board.spares.length;
  addFollowers(ofAll, board, source, followers);
  const following = board.spares.slice(own);
  // Inputs first: lamps may hang on buttons and field contacts as well.
  for (const inputs of board.inputs) {
    const left = ofCoils();
    for (let number = missing(random, inputs.points()); number > 0; number--) {
      const contact = left.contact();
      if (contact) board.input(inputs, [contact], `Point ${inputs.points() + 1}`);
    }
  }
  const count = Math.max(missing(random, board.lamps), followers.count + 1);
  const left = ofAll(following);
  for (let added = 1; added <= count; added++) {
    const chain = left.chain();
    if (chain.length === 0) break;
    const lamp = addLamp(board, source, `Lamp ${added}`, 'neutral');
    board.line(source, 'lamps', [...chain, lamp.hop]);
  }
}
