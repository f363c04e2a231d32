import type { Act } from '../../../shared/scenario.ts';
import { randomActs, severalLists, someOn } from '../act-lists.ts';
import type { Board } from '../board.ts';
import { castSignals, titleOf, wellAtRest } from '../casting.ts';
import { addInputs, addLamp, addRelay, addSensor, addSource } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { followersFor, open, sheetsFor } from '../opening.ts';
import type { Source } from '../parts.ts';
import { pickExtraLowControl, SIGNALS } from '../sources.ts';
import type { Family } from '../types.ts';

const INPUTS = [
  { from: SIGNALS.electronics, type: '3.3V' },
  { from: SIGNALS.electronics, type: '3.3V' },
  { from: SIGNALS.inputs, type: '24V-1' },
  { from: SIGNALS.inputs, type: '24V-3' },
] as const;

/**
 * Contacts made for power don't clean themselves at 3.3 V: for that a relay has gold on them, or two in parallel (common practice, no
 * source). It is noted at the relays that switch such a supply, behind the machine that they are for.
 */
const noteAt =
  ({ groups }: Board, signals: Source, lowLevel: boolean) =>
  (relay: string) =>
  (name: string): string | undefined => {
    const switched = groups.filter(({ source }) => source === signals).flatMap(({ lines }) => lines);
    const switches = switched.some(({ steps }) => steps.some(({ device }) => device === name));
    return lowLevel && switches ? `${relay}: gold contacts` : undefined;
  };

/**
 * One pole of each relay switches lamps on the control supply, another carries a signal of an isolated supply to a
 * controller's input. The two supplies have nothing in common but the mechanism of the relay, and both are extra-low voltage.
 */
export const twoSupplies: Family = {
  id: 'two-supplies',
  size: { min: 1, max: 8 },
  draft(random, { size }) {
    const { plant, board, source } = open(random, pickExtraLowControl);
    const { from, type } = random.pick(INPUTS);
    const signals = addSource(board, from, 'Controller signals', false);
    const lowLevel = from === SIGNALS.electronics;
    const inputs = addInputs(board, signals, type);
    const noted = noteAt(board, signals, lowLevel);
    const [direct, ...cast] = castSignals(random, plant, size + 1);
    const toggles = cast.map((signal) => {
      const sensor = addSensor(board, signal.sensor, signal.text);
      const relay = addRelay(board, source, { poles: random.int(2, 4), text: noted(signal.thing) });
      // The relay is energised while all is well, so that neither lamp nor point says so with a wire off.
      const makes = !wellAtRest(signal);
      board.line(source, 'control', [makes ? sensor.made() : sensor.rest(), relay.coil]);
      const released = makes ? signal.rest : signal.acted;
      const operated = makes ? signal.acted : signal.rest;
      const lampPole = relay.pole();
      const shownReleased = (): void => {
        const lamp = addLamp(board, source, released.text, released.meaning);
        board.line(source, 'lamps', [lampPole.rest, lamp.hop]);
      };
      const shownOperated = (tail: boolean): void => {
        const lamp = addLamp(board, source, operated.text, operated.meaning);
        if (tail) board.tail([lampPole.made, lamp.hop]);
        else board.line(source, 'lamps', [lampPole.made, lamp.hop]);
      };
      const shown = random.int(0, 3);
      if (shown !== 0) shownReleased();
      if (shown !== 1) shownOperated(shown !== 0);
      const inputPole = relay.pole();
      const onRest = random.chance(0.4);
      board.input(inputs, [onRest ? inputPole.rest : inputPole.made], (onRest ? released : operated).text);
      // What is energised already isn't held in by hand.
      return makes && random.chance(0.25) ? relay.held : sensor.toggle;
    });
    // At 24 V a field contact may also come straight to the controller.
    if (!lowLevel && size >= 2 && random.chance(0.7)) {
      const signal = direct!;
      const sensor = addSensor(board, signal.sensor, signal.text);
      const breaks = random.chance(0.65);
      // The point is named for what is so while it reads 1.
      board.input(
        inputs,
        [breaks ? sensor.rest() : sensor.made()],
        (breaks ? signal.rest : signal.acted).text,
      );
      toggles.push(sensor.toggle);
    }
    const lose = (): Act => ({ kind: 'open', device: random.pick([source, signals]).protection });
    const lists = severalLists(4, () => {
      const acts = random.chance(0.6)
        ? someOn(random, toggles)
        : randomActs(random, toggles, random.int(1, size + 1));
      return random.chance(0.2) ? [...acts, lose()] : acts;
    });
    return finish(random, board, {
      family: twoSupplies.id,
      title: titleOf(plant, cast[0]!.thing, 'lamps and controller inputs'),
      sheets: sheetsFor(random, size),
      followers: {
        // One even on the smallest, whose relay has too few poles for enough inputs.
        count: 1 + followersFor(size).count,
        text: noted('Repeater'),
      },
      acts: lists,
    });
  },
};
