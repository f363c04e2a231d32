/** A circuit drawn in the terminal: at rest, as it stands after acts, or at each moment on the way. */
import { drawText, type Letters, renameFor, type ShownState, shownState, stepsOf } from '../drawing/index.ts';
import { solve } from '../solver/index.ts';
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

/** What the drawing of a state shows otherwise than one at rest. */
const LEGEND = '█ is on, ▄ dim, ▞ flashes; a heavier line has a voltage against its return.';
const ASCII_LEGEND = '# is on, o dim, * flashes; a conductor of # and = has a voltage against its return.';

export function drawnText(
  { circuit, scenario }: GivenCircuit,
  { letters, sheet, moved, steps, note }: DrawnOptions,
  io: Io,
): string {
  const ascii = asciiOnly(io);
  const style = styleFor(io);
  const rename = renameFor(circuit, letters);
  const drawn = (state?: ShownState): string =>
    drawText(circuit, {
      columns: io.columns,
      ascii,
      rename,
      ...(sheet === undefined ? {} : { sheet }),
      ...(state ? { state } : {}),
    });
  const legend = style.quiet(wrapText(ascii ? ASCII_LEGEND : LEGEND, io.columns));
  if (steps) {
    const run = stepsOf(circuit, scenario, { rename });
    const pictures = run.steps.map(
      ({ caption, state }, at) =>
        `${style.strong(wrapText(`${at + 1}. ${caption || 'At the beginning.'}`, io.columns, '   '))}\n\n${drawn(state)}\n`,
    );
    const cut = run.cutOff ? ['More follows; it is left out here.'] : [];
    return [...pictures, ...cut, legend].join('\n');
  }
  if (!moved) return drawn();
  const heading = style.strong(wrapText(note ? `After: ${note}` : 'With the fault.', io.columns, '  '));
  return [heading, '', drawn(shownState(solve(circuit, scenario))), '', legend].join('\n');
}
