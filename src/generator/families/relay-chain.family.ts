import type { Step } from '../../../shared/circuit.ts';
import { randomActs, severalLists, someOn } from '../act-lists.ts';
import { castSignals, titleOf } from '../casting.ts';
import { type Chain, either } from '../chains.ts';
import { addLamp, addRelay, addSensor } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { CoilPart, LoadPart, Toggle } from '../parts.ts';
import type { Family } from '../types.ts';

/**
 * Each relay is fed through a contact of the one before, now by its make leg, now by its break leg. What a lamp at the end of such a
 * chain would say of the plant is nothing that anybody would build, so it says how its relay stands.
 */
export const relayChain: Family = {
  id: 'relay-chain',
  size: { min: 1, max: 6 },
  draft(random, { size }) {
    const opening = open(random);
    const { plant, board, source } = opening;
    const length = Math.min(size + 1, 6);
    const signals = castSignals(random, plant, Math.min(length, Math.max(1, size - 1)));
    const sensors = signals.map((signal) => addSensor(board, signal.sensor, signal.text));
    const toggles: Toggle[] = [];
    const relays: CoilPart[] = [];
    const contactOf = (relay: CoilPart) => (random.chance(0.5) ? relay.made() : relay.rest());
    const lamp = (relay: CoilPart, number: number): void => {
      const both = random.chance(0.35);
      const pole = relay.pole();
      const shown = (leg: Step): LoadPart =>
        addLamp(board, source, `Stage ${number} ${leg === pole.made ? 'in' : 'out'}`, 'neutral');
      const first = random.chance(0.5) ? pole.made : pole.rest;
      board.line(source, 'lamps', [first, shown(first).hop]);
      if (!both) return;
      const other = first === pole.made ? pole.rest : pole.made;
      board.tail([other, shown(other).hop]);
    };
    for (let stage = 0; stage < length; stage++) {
      const relay = addRelay(board, source, { poles: random.int(3, 4) });
      const before = relays.at(-1);
      const side = sensors[stage];
      const chain: Chain[number][] = before ? [contactOf(before)] : [];
      if (side) {
        const contact = random.chance(stage === 0 ? 0.8 : 0.6) ? side.made() : side.rest();
        if (stage >= 2 && random.chance(0.4)) chain.splice(0, 1, either([chain[0]!], [contact]));
        else chain.push(contact);
        toggles.push(side.toggle);
      }
      board.line(source, 'control', [...random.shuffle(chain), relay.coil]);
      relays.push(relay);
    }
    relays.forEach((relay, stage) => {
      if (stage === length - 1 || random.chance(0.35)) lamp(relay, stage + 1);
    });
    if (random.chance(0.2)) toggles.push(random.pick(relays.slice(0, -1)).held);
    maybeSupplyLamp(random, opening, 0.15);
    const lists = severalLists(4, () =>
      random.chance(0.5) ? someOn(random, toggles) : randomActs(random, toggles, random.int(1, size + 1)),
    );
    return finish(random, board, {
      family: relayChain.id,
      title: titleOf(plant, signals[0]!.thing, 'relays one after another'),
      sheets: sheetsFor(random, size),
      acts: lists,
    });
  },
};
