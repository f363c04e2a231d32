/** A circuit drawn in the terminal: at rest, as it stands after acts, or at each moment on the way. */

import {
  drawText,
  type Letters,
  renameFor,
  type ShownState,
  shownState,
  stepsOf,
  tellCaption,
} from '../drawing/index.ts';
import { solve } from '../solver/index.ts';
import type { Words } from '../words/index.ts';
import type { GivenCircuit } from './given-circuit.ts';
import type { Io } from './io.ts';
import { asciiOnly, styleFor, wrapText } from './style.ts';

export interface DrawnOptions {
  readonly letters: Letters;
  readonly sheet: number | undefined;
  /** Whether acts or faults were given. */
  readonly moved: boolean;
  readonly steps: boolean;
  /** The acts as they were given. */
  readonly note: string | undefined;
}

export function drawnText(
  words: Words,
  { circuit, scenario }: GivenCircuit,
  { letters, sheet, moved, steps, note }: DrawnOptions,
  io: Io,
): string {
  const { pictures: said } = io.words;
  const ascii = asciiOnly(io);
  const style = styleFor(io);
  const rename = renameFor(circuit, letters);
  const drawn = (state?: ShownState): string =>
    drawText(words, circuit, {
      columns: io.columns,
      ascii,
      rename,
      ...(sheet === undefined ? {} : { sheet }),
      ...(state ? { state } : {}),
    });
  const legend = style.quiet(wrapText(ascii ? said.asciiLegend : said.legend, io.columns));
  if (steps) {
    const run = stepsOf(circuit, scenario, { rename });
    const pictures = run.steps.map(({ caption, state }, at) => {
      const heading = said.step({
        number: at + 1,
        caption: tellCaption(words, caption) || said.atTheBeginning,
      });
      return `${style.strong(wrapText(heading, io.columns, '   '))}\n\n${drawn(state)}\n`;
    });
    const cut = run.cutOff ? [said.moreFollows] : [];
    return [...pictures, ...cut, legend].join('\n');
  }
  if (!moved) return drawn();
  const heading = style.strong(wrapText(note ? said.after(note) : said.withTheFault, io.columns, '  '));
  return [heading, '', drawn(shownState(solve(circuit, scenario))), '', legend].join('\n');
}
