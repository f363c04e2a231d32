/** Relays of which only one leg of a pole is wired to a lamp: the common part of two families. */

import { randomActs, severalLists, someOn } from '../act-lists.ts';
import { castSignals, titleOf, wellAtRest } from '../casting.ts';
import { either } from '../chains.ts';
import { addLamp, addRelay, addSensor } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { followersFor, maybeSupplyLamp, open, sheetsFor } from '../opening.ts';
import type { Random } from '../random.ts';
import type { Draft } from '../types.ts';

/**
 * @param leg - the leg that is wired
 */
export function oneLegDraft(random: Random, size: number, family: string, leg: 'rest' | 'made'): Draft {
  const opening = open(random);
  const { plant, board, source } = opening;
  // Two lamps at least: one alone would be a question of yes or no. On the smallest no relay is in at rest.
  const signals = castSignals(random, plant, size + 1, (signal) =>
    size > 1 || leg === 'made' ? true : !wellAtRest(signal),
  );
  const parts = signals.map((signal) => {
    const sensor = addSensor(board, signal.sensor, signal.text);
    const relay = addRelay(board, source, { poles: random.int(2, 4) });
    // Over a break contact a relay is energised until its signal comes. What lights at rest is what a broken wire lights too: there it
    // never says that all is well.
    const toss = size > 1 && random.chance(0.5);
    const broken = leg === 'made' ? toss : wellAtRest(signal) || (toss && signal.acted.meaning !== 'normal');
    board.line(source, 'control', [broken ? sensor.rest() : sensor.made(), relay.coil]);
    // The lamp says what is so while it is lit.
    const word = (leg === 'rest') === broken ? signal.acted : signal.rest;
    const lamp = addLamp(board, source, word.text, word.meaning);
    board.line(source, 'lamps', [relay[leg](), lamp.hop]);
    return { relay, toggle: !broken && random.chance(0.25) ? relay.held : sensor.toggle };
  });
  // Over several relays: from size 5 there are two of them, one of them with ways side by side.
  const groups = size > 4 ? 2 : size > 1 ? 1 : 0;
  const left = random.shuffle(parts);
  for (let group = 1; group <= groups; group++) {
    const [a, b, c] = left.splice(0, 3);
    const lamp = addLamp(board, source, groups > 1 ? `Group signal ${group}` : 'Group signal', 'neutral');
    const one = a!.relay[leg]();
    const other = b!.relay[leg]();
    const beside = group > 1 || random.chance(0.5);
    const contacts = beside ? [either([one], [other])] : [one, other];
    const third = size > 3 ? [c!.relay[leg]()] : [];
    board.line(source, 'lamps', [...random.shuffle([...contacts, ...third]), lamp.hop]);
  }
  maybeSupplyLamp(random, opening, 0.15);
  const toggles = parts.map(({ toggle }) => toggle);
  const lists = severalLists(3, () =>
    random.chance(0.6) ? someOn(random, toggles) : randomActs(random, toggles, random.int(2, size + 1)),
  );
  return finish(random, board, {
    family,
    title: titleOf(plant, signals[0]!.thing, 'signal lamps'),
    sheets: sheetsFor(random, size),
    followers: followersFor(size),
    acts: lists,
    legs: [leg === 'made' ? 'make' : 'break'],
  });
}
