import {
  type Letters,
  layOut,
  layOutPages,
  PROFILES,
  picturesOf,
  renameFor,
  shownState,
  stepsOf,
  tellCaption,
  type Width,
} from '../../drawing/index.ts';
import { solve } from '../../solver/index.ts';
import type { Words } from '../../words/index.ts';
import { coreWordsOf } from '../core-words.ts';
import { drawnText } from '../drawn-text.ts';
import { type GivenCircuit, givenCircuit, type ScenarioOptions } from '../given-circuit.ts';
import { type Io, UsageError } from '../io.ts';
import { wholeNumber } from '../numbers.ts';
import { outcomeText } from '../outcome-text.ts';
import { wrapText } from '../style.ts';
import { checkNoWidth, writePictures } from '../written.ts';

export interface DrawOptions extends ScenarioOptions {
  readonly sheet?: string;
  readonly width?: Width;
  readonly letters: Letters;
  readonly steps?: boolean;
  readonly output?: string;
}

const isMoved = ({ do: acts, fault = [] }: DrawOptions): boolean => acts !== undefined || fault.length > 0;

/** Pictures of every sheet, at rest or in the state that the acts lead to; with `steps` of every moment on the way. */
function picturesFor(
  words: Words,
  { circuit, scenario }: GivenCircuit,
  options: DrawOptions & { readonly output: string },
  sheet: number | undefined,
) {
  const width = options.width ?? (/\.pdf$/i.test(options.output) ? 'a4' : 'screen');
  const rename = renameFor(circuit, options.letters);
  const only = sheet === undefined ? {} : { sheet };
  const paper = width === 'a4';
  const sheetsOf = (state?: ReturnType<typeof shownState>, note?: string) => {
    const scene =
      width === 'a4'
        ? layOutPages(words, circuit, PROFILES.a4, { rename, ...only, words: words.drawing.frame, note })
        : layOut(words, circuit, PROFILES[width], { rename, ...only, note });
    const { picture } = picturesOf(scene, state);
    return scene.sheets.map((_, at) => picture(at));
  };
  if (options.steps)
    return {
      paper,
      pictures: stepsOf(circuit, scenario, { rename }).steps.flatMap(({ state, caption }) =>
        sheetsOf(state, tellCaption(words, caption) || words.drawing.frame.supplied),
      ),
    };
  if (!isMoved(options)) return { paper, pictures: sheetsOf() };
  const { after, supplied } = words.drawing.frame;
  const note = options.do ? after(options.do) : supplied;
  return { paper, pictures: sheetsOf(shownState(solve(circuit, scenario)), note) };
}

/** A drawing shows one state; where there may be another, that is said beside it. */
function tellUncertain({ circuit, scenario }: GivenCircuit, io: Io): void {
  const { outcome } = solve(circuit, scenario).solution;
  if (outcome.kind === 'race' || outcome.kind === 'undecided')
    io.err(wrapText(io.words.draw.uncertain(outcomeText(outcome, io.words)), io.columns, '  '));
}

/** Draws a circuit; gives the exit code. */
export async function drawFile(file: string, options: DrawOptions, io: Io): Promise<0 | 2> {
  const { draw: said } = io.words;
  const sheet =
    options.sheet === undefined
      ? undefined
      : wholeNumber(io, '--sheet', options.sheet, { low: 1, high: 99, example: 1 });
  const given = await givenCircuit(io, file, options);
  if (!given) return 2;
  const { circuit } = given;
  const words = await coreWordsOf(io);
  const sheets = [...new Set(circuit.paths.map((path) => path.sheet))].sort((one, other) => one - other);
  if (sheet !== undefined && !sheets.includes(sheet)) {
    throw new UsageError(said.noSheet.wrong(sheet), said.noSheet.right(sheets));
  }
  const { output } = options;
  if (isMoved(options)) tellUncertain(given, io);
  if (output === undefined) {
    checkNoWidth(options.width, io.words);
    const { letters, steps = false, do: note } = options;
    io.out(drawnText(words, given, { letters, sheet, steps, note, moved: isMoved(options) }, io));
    return 0;
  }
  const { pictures, paper } = picturesFor(words, given, { ...options, output }, sheet);
  await writePictures(io, pictures, {
    file: output,
    title: circuit.title ?? said.untitled,
    paper,
  });
  return 0;
}
