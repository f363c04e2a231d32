import { describe, expect, it } from 'vitest';
import { PROFILES } from '../../src/drawing/index.ts';
import { drawLaidOut } from '../../src/web/engine/sheets.ts';
import { circuitAsked } from '../../src/web/engine/shown-circuit.ts';
import { laidOn } from '../../src/web/parts/conductors.ts';
import { wiringOnOneSheet, wiringOverSheets } from '../browser/support/every-kind.ts';
import { askQuestion, layOut } from '../support/in-english.ts';

function drawnOf({ question }: ReturnType<typeof wiringOnOneSheet>) {
  if (question.kind !== 'wiring') throw new Error('it asks something else');
  const scene = layOut(circuitAsked(question.circuit, askQuestion(question)), PROFILES.phone);
  const { sheets } = drawLaidOut(scene, { width: 'phone', theme: 'light' });
  /** As somebody finds it on the drawing: the sheet, and the number over the column that the terminal stands in. */
  const placeOf = (terminal: string): string => {
    for (const { sheet, symbols, texts } of scene.sheets)
      for (const { ports, x, top } of symbols)
        if (ports.some((port) => port.terminal === terminal)) {
          const [over] = texts
            .filter((text) => text.role === 'path' && text.y < top)
            .toSorted((one, other) => other.y - one.y || Math.abs(one.x - x) - Math.abs(other.x - x));
          return scene.sheets.length > 1 ? `/${sheet}.${over?.text}` : `/${over?.text}`;
        }
    throw new Error(`${terminal} isn't drawn`);
  };
  return { question, sheets, placeOf };
}

describe('a conductor that somebody lays', () => {
  const over = wiringOverSheets();
  const { question, sheets, placeOf } = drawnOf(over.task);
  const [from] = question.ends;
  const [to] = question.choices[over.choice]!;

  it('bears its number and the place of the other end at both ends, where they are on two sheets', () => {
    const laid = laidOn(sheets, [[from, to]]);
    expect(laid.flatMap(({ joined }) => joined)).toEqual([]);
    const signs = laid.map(({ ends }) => ends.map(({ spot, sign }) => [spot.item, sign]));
    expect(signs.filter((each) => each.length > 0)).toHaveLength(2);
    expect(Object.fromEntries(signs.flat())).toEqual({
      [from]: `1 ${placeOf(to)}`,
      [to]: `1 ${placeOf(from)}`,
    });
  });

  it('bears the number that it has among several', () => {
    const other = question.choices[over.choice]![1];
    const laid = laidOn(sheets, [
      [other, to],
      [from, to],
    ]);
    expect(laid.flatMap(({ ends }) => ends.map(({ sign }) => sign[0]))).toEqual(['2', '2']);
  });

  it('says the name of a terminal that is not drawn', () => {
    const laid = laidOn(sheets, [[from, '-K99:14']]);
    expect(laid.flatMap(({ ends }) => ends.map(({ sign }) => sign))).toEqual(['1 -K99:14']);
  });

  it('is a line from end to end on the sheet that has both', () => {
    const one = drawnOf(wiringOnOneSheet());
    const [first, second] = one.question.choices[0]!;
    const [laid] = laidOn(one.sheets, [
      [one.question.ends[0], first],
      [one.question.ends[1], second],
    ]);
    expect(laid?.joined).toHaveLength(2);
    expect(laid?.ends).toEqual([]);
  });
});
