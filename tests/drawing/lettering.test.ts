/** What stands on a drawing is the circuit's own, a sign of the standards, or said by a catalogue. */
import { expect, it } from 'vitest';
import { drawText, layOut, PROFILES, timingText } from '../../src/drawing/index.ts';
import { english } from '../support/in-english.ts';
import { madeUp, madeUpLanguage, unsaid } from '../support/made-up-language.ts';
import { actsOf, circuitOf } from '../support/written.ts';

const { speech, ...said } = english;
const words = { ...madeUpLanguage(said), speech };

const circuit = circuitOf(`supply A 24 V DC
-F1 breaker 2 A
-S1 push-button make white
-K1 relay 2 poles
-K2 on-delay 5 s
-K3 flasher 0.5 s on 1 s off
-H1 lamp amber
A:L+ -F1:1-2 -S1:13-14 -K1:A1-A2 A:L-
-F1:2 -K1:11-14 -K2:A1-A2 A:L-
-F1:2 -K2:15-18 -K3:A1-A2 A:L-
-F1:2 -K3:15-18 -H1:X1-X2 A:L-`);

it('colours, times, currents and free contacts are said by the words that it is lettered with', () => {
  const texts = layOut(words, circuit, PROFILES.screen).sheets.flatMap((sheet) =>
    sheet.texts.map(({ text }) => text),
  );
  for (const text of ['amber', 'white', '2 A', '5 s', '500 ms / 1 s']) expect(texts).toContain(madeUp(text));
  expect(texts.join(' ')).toContain(madeUp('free 21-22-24').slice(0, 5));
  const left = texts.map(unsaid).join(' ');
  expect(left.match(/[a-z]{2,}|\d m?s\b/g)).toBeNull();
});

it('so are the moments on the axis of a timing diagram, and everything in a terminal', () => {
  const scenario = { start: 'live' as const, faults: [], acts: [...actsOf('press -S1; wait 20 s')] };
  const diagram = timingText(words, circuit, scenario, { columns: 200 });
  expect(diagram).toContain(madeUp('2 s'));
  expect(unsaid(diagram).match(/[a-z]{2,}/g)).toBeNull();
  expect(drawText(words, circuit, { columns: 200 })).toContain(madeUp('amber'));
});
