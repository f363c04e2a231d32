import { timingPicture, timingText, type Width } from '../../drawing/index.ts';
import { coreWordsOf } from '../core-words.ts';
import { givenCircuit, type ScenarioOptions } from '../given-circuit.ts';
import { type Io, UsageError } from '../io.ts';
import { asciiOnly } from '../style.ts';
import { checkNoWidth, writePictures } from '../written.ts';

export interface TimingOptions extends ScenarioOptions {
  readonly width?: Width;
  readonly output?: string;
  readonly operateTimes?: boolean;
}

/** Draws what happens when; gives the exit code. */
export async function drawTiming(file: string, options: TimingOptions, io: Io): Promise<0 | 2> {
  const given = await givenCircuit(io, file, options);
  if (!given) return 2;
  const { timing: said } = io.words;
  const { circuit, scenario } = given;
  const { operateTimes = false } = options;
  const words = await coreWordsOf(io);
  if (scenario.acts.length === 0) throw new UsageError(said.noActs.wrong, said.noActs.right);
  if (options.output === undefined) {
    checkNoWidth(options.width, io.words);
    io.out(timingText(words, circuit, scenario, { columns: io.columns, ascii: asciiOnly(io), operateTimes }));
    return 0;
  }
  const width = options.width ?? (/\.pdf$/i.test(options.output) ? 'a4' : 'screen');
  await writePictures(io, [timingPicture(words, circuit, scenario, { width, operateTimes })], {
    file: options.output,
    title: circuit.title ? said.title(circuit.title) : said.untitled,
    paper: width === 'a4',
  });
  return 0;
}
