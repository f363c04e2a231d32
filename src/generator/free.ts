/** Free circuits: random networks of contacts in series and parallel over relays with changeover poles. */

import type { Step } from '../../shared/circuit.ts';
import { randomActs, severalLists, someOn } from './act-lists.ts';
import { cast, castSignals, lower } from './casting.ts';
import { type Chain, either, type Link } from './chains.ts';
import { addButton, addInputs, addLamp, addRelay, addSensor, addSource } from './devices/index.ts';
import { finish } from './finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from './opening.ts';
import type { ActuatedPart, CoilPart } from './parts.ts';
import type { Random } from './random.ts';
import { pickExtraLowControl, SIGNALS } from './sources.ts';
import type { Family } from './types.ts';

/** Relays fed through relays, at most; beyond it nobody follows the drawing in the head. */
const MOST_LEVELS = 4;
const POLES = 4;
/** Contacts of one button or field contact, at most. */
const MOST_CONTACTS = 4;

interface Pool {
  readonly relay: CoilPart;
  level: number;
  left: number;
}

interface Field {
  readonly part: ActuatedPart;
  /** A start makes; one that only breaks would be a stop. */
  readonly starts: boolean;
  used: number;
}

/** Contacts that a network may use, and how deep what it feeds will then be. */
class Contacts {
  private readonly random: Random;
  private readonly pools: readonly Pool[];
  private readonly fields: readonly Field[];
  /** The first of the pools that come after what is fed, or are that themselves. */
  private readonly fed: number;
  /** Level of the deepest relay whose contact was taken since the last look. */
  deepest = 0;

  constructor(random: Random, pools: readonly Pool[], fields: readonly Field[], fed = pools.length) {
    this.random = random;
    this.pools = pools;
    this.fields = fields;
    this.fed = fed;
  }

  private field(except: ReadonlySet<string>): Step | undefined {
    const open_ = this.fields.filter(({ used, part }) => used < MOST_CONTACTS && !except.has(part.name));
    if (open_.length === 0) return undefined;
    // Every one of them is used before any is used again.
    const fewest = Math.min(...open_.map(({ used }) => used));
    const field = this.random.pick(
      this.random.chance(0.7) ? open_.filter(({ used }) => used === fewest) : open_,
    );
    const makes = this.random.chance(0.65) || (field.starts && field.used === 0);
    field.used++;
    return makes ? field.part.made() : field.part.rest();
  }

  private relay(except: ReadonlySet<string>): Step | undefined {
    const open_ = this.pools.filter(
      ({ left, level, relay }) => left > 0 && level < MOST_LEVELS && !except.has(relay.name),
    );
    if (open_.length === 0) return undefined;
    const pool = this.random.pick(open_);
    pool.left--;
    this.deepest = Math.max(this.deepest, pool.level);
    // Fed back only by make contacts: by break contacts two relays would lock each other out, and not always both ways.
    const feedsBack = this.pools.indexOf(pool) >= this.fed;
    return feedsBack || this.random.chance(0.55) ? pool.relay.made() : pool.relay.rest();
  }

  /** @param share - how often a relay's contact is taken before one of the field */
  take(share: number, except: ReadonlySet<string>): Step | undefined {
    return this.random.chance(share)
      ? (this.relay(except) ?? this.field(except))
      : (this.field(except) ?? this.relay(except));
  }

  relayContact: Take = (except) => this.relay(except);
}

/** A contact of none of these devices. */
type Take = (except: ReadonlySet<string>) => Step | undefined;

/**
 * A series of one to three links, some of them parallel ways of one or two contacts each. No device is twice on one way through it: its
 * make and its break one after the other never close, and two makes say no more than one.
 */
function network(random: Random, take: Take, links: number): Chain {
  const inSeries = new Set<string>();
  const way = (most: number): Step[] => {
    const on = new Set(inSeries);
    return Array.from({ length: random.int(1, most) }, () => {
      const step = take(on);
      if (step) on.add(step.device);
      return step;
    }).filter((step) => step !== undefined);
  };
  const chain: Link[] = [];
  const follows = (...ways: readonly Step[][]): void => {
    if (ways.length > 1) chain.push(either(...ways));
    else chain.push(...ways.flat());
    for (const { device } of ways.flat()) inSeries.add(device);
  };
  for (let link = 0; link < links; link++) {
    if (random.chance(0.65)) {
      follows(way(1));
      continue;
    }
    const ways = Array.from({ length: random.chance(0.8) ? 2 : 3 }, () => way(2));
    follows(...ways.filter((steps) => steps.length > 0));
  }
  return chain;
}

/** Size is the number of relays. A quarter of them feed back; such a draft is kept only where that makes no race. */
export const free: Family = {
  id: 'free',
  size: { min: 1, max: 8 },
  draft(random, { size }) {
    // Poles that go to a controller are beside others of the same relay, so these are at extra-low voltage too.
    const toController = size >= 2 && random.chance(0.35);
    const opening = open(random, toController ? pickExtraLowControl : undefined);
    const { plant, board, source } = opening;
    const feedback = size > 1 && random.chance(0.25);
    const fieldCount = random.int(1, 1 + Math.ceil(size / 2));
    const lampCount = random.int(2, 2 + Math.ceil(size * 0.7));
    // One start at most: relays with a start each, of which one happened to keep the other off, would be two directions locked one way.
    const start = random.int(0, 2 * fieldCount);
    const fields = castSignals(random, plant, fieldCount).map((signal, index): Field => {
      const drive = cast(random, plant.drives);
      const starts = index === start;
      const part = starts
        ? addButton(board, `Start ${lower(drive.thing)}`, 'start')
        : addSensor(board, signal.sensor, signal.text);
      return { part, starts, used: 0 };
    });
    const pools = Array.from(
      { length: size },
      (): Pool => ({ relay: addRelay(board, source, { poles: POLES }), level: 0, left: POLES }),
    );
    pools.forEach((pool, index) => {
      const contacts = new Contacts(random, feedback ? pools : pools.slice(0, index), fields, index);
      const share = index === 0 ? 0 : 0.55;
      const chain = network(random, (except) => contacts.take(share, except), random.int(1, 2));
      pool.level = contacts.deepest + 1;
      board.line(source, 'control', [...chain, pool.relay.coil]);
    });
    const used = fields.filter(({ used: times }) => times > 0);
    const all = new Contacts(
      random,
      pools.map(({ relay, left }) => ({ relay, left, level: 0 })),
      used,
    );
    // What a random network says of a plant is nothing: its lamps have numbers, and no colour that means well or warning.
    for (let number = 1; number <= lampCount; number++) {
      const chain = network(random, all.relayContact, random.chance(0.7) ? 1 : 2);
      if (chain.length === 0) break;
      const lamp = addLamp(board, source, `Lamp ${number}`, 'neutral');
      board.line(source, 'lamps', [...chain, lamp.hop]);
    }
    if (toController) {
      const contacts = Array.from({ length: random.int(1, 3) }, () => all.relayContact(new Set())).filter(
        (step) => step !== undefined,
      );
      if (contacts.length > 0) {
        const supply = addSource(board, SIGNALS.inputs, 'Controller signals', false);
        const inputs = addInputs(board, supply, '24V-1');
        contacts.forEach((contact, point) => {
          board.input(inputs, [contact], `Point ${point + 1}`);
        });
      }
    }
    maybeSupplyLamp(random, opening, 0.1);
    const toggles = used.map(({ part }) => part.toggle);
    if (toggles.length === 0 || random.chance(0.15)) toggles.push(random.pick(pools).relay.held);
    return finish(random, board, {
      family: free.id,
      title: `${plant.name}: a network of relays, to read`,
      sheets: sheetsFor(random, size),
      // All its lamps mean nothing by themselves.
      legs: [],
      acts: severalLists(4, () =>
        random.chance(0.5) ? someOn(random, toggles) : randomActs(random, toggles, random.int(1, 4)),
      ),
    });
  },
};
