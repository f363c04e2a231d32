import type { Act } from '../../../shared/scenario.ts';
import { severalLists, someOn } from '../act-lists.ts';
import { castSignals, titleOf, wellAtRest } from '../casting.ts';
import { either } from '../chains.ts';
import { addButton, addLamp, addRelay, addSelector, addSensor, addValve } from '../devices/index.ts';
import { finish } from '../finish.ts';
import { open, sheetsFor } from '../opening.ts';
import type { CoilPart } from '../parts.ts';
import type { Family } from '../types.ts';

/**
 * A lamp test lights the lamps of one panel and moves no output: each lamp has a contact of its own on the test relay, so
 * that nothing is fed backwards through another lamp's contact.
 */
export const lampTest: Family = {
  id: 'lamp-test',
  size: { min: 1, max: 7 },
  draft(random, { size }) {
    const { plant, board, source } = open(random);
    const signals = castSignals(random, plant, size + 1);
    const button = addButton(board, 'Lamp test', 'hold-to-run');
    // One test relay serves four lamps.
    let test: CoilPart | undefined;
    let left = 0;
    const testContact = () => {
      if (left === 0) {
        test = addRelay(board, source, { poles: 4, text: 'Lamp test' });
        board.line(source, 'control', [button.made(), test.coil]);
        left = 4;
      }
      left--;
      return test!.made();
    };
    // Of the first two lamps one is on the test and one is not, so that neither is a rule.
    const parts = signals.map((signal, index) => {
      const sensor = addSensor(board, signal.sensor, signal.text);
      const relay = addRelay(board, source, { poles: 4 });
      const onMade = random.chance(0.65);
      // A lamp that lights while its relay is at rest, and so with a wire off, never says that all is well.
      const broken = wellAtRest(signal) && (!onMade || random.chance(0.4));
      board.line(source, 'control', [broken ? sensor.rest() : sensor.made(), relay.coil]);
      const contact = onMade ? relay.made() : relay.rest();
      const word = onMade === broken ? signal.rest : signal.acted;
      const lamp = addLamp(board, source, word.text, word.meaning);
      const tested = index === 0 || (index > 1 && random.chance(0.75));
      if (tested)
        board.line(source, 'lamps', [either(...random.shuffle([[contact], [testContact()]])), lamp.hop]);
      else board.line(source, 'lamps', [contact, lamp.hop]);
      if (index < 2 && size > 1) {
        const valve = addValve(board, source, `Output valve ${index + 1}`);
        board.line(source, 'control', [broken ? relay.rest() : relay.made(), valve.hop]);
      }
      return { toggle: sensor.toggle };
    });
    const untested = addLamp(board, source, 'Line stopped', 'neutral');
    const stopped = addRelay(board, source, { poles: 2 });
    const selector = addSelector(board, 'Line', ['Stop', 'Run'], [['Run']]);
    board.line(source, 'control', [selector.hops[0]!, stopped.coil]);
    board.line(source, 'lamps', [stopped.rest(), untested.hop]);
    const toggles = parts.map(({ toggle }) => toggle);
    const { on, off } = button.toggle;
    const run: Act = selector.turn('Run');
    return finish(random, board, {
      family: lampTest.id,
      title: titleOf(plant, signals[0]!.thing, 'signal lamps with lamp test'),
      sheets: sheetsFor(random, size),
      acts: severalLists(4, () => {
        const acts = random.chance(0.7) ? someOn(random, toggles) : [];
        const first = random.chance(0.5) ? [run, ...acts] : acts;
        const shape = random.int(0, 9);
        if (shape < 6) return [...first, on];
        return shape < 8 ? [on, ...first, off] : [...first, on, off];
      }),
    });
  },
};
