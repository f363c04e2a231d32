import { type Picture, svgOf } from '../drawing/index.ts';
import type { CommandWords } from '../words/commands.ts';
import { type Io, UsageError } from './io.ts';
import { writeFile } from './write-file.ts';

/** Millimetres a unit of the paper layout has. */
const PAPER_UNIT = 0.25;

export interface Writing {
  /** Where to. */
  readonly file: string;
  readonly title: string;
  /** Whether the pictures are laid out for paper. */
  readonly paper: boolean;
}

/** The width of a picture was given and no file for it: text takes the width of the terminal. */
export function checkNoWidth(width: string | undefined, { pictures }: CommandWords): void {
  if (width !== undefined) throw new UsageError(pictures.widthOfText.wrong, pictures.widthOfText.right);
}

/** `fan.svg` of one picture; `fan-1.svg`, `fan-2.svg` of several. */
const numbered = (file: string, at: number, of: number): string =>
  of === 1 ? file : file.replace(/\.svg$/i, `-${at + 1}.svg`);

/** Writes pictures as SVG, one file each, or as one PDF, by the name of the file. */
export async function writePictures(
  io: Io,
  pictures: readonly Picture[],
  { file, title, paper }: Writing,
): Promise<void> {
  const svg = (picture: Picture): string =>
    svgOf(picture, { label: title, ...(paper ? { millimetres: PAPER_UNIT } : {}) });
  if (/\.pdf$/i.test(file)) {
    const { drawPdf } = await import('../drawing/pdf/draw-pdf.ts');
    writeFile(io, file, await drawPdf(pictures, { title, language: io.language, made: new Date(io.now()) }));
    return;
  }
  if (!/\.svg$/i.test(file))
    throw new UsageError(
      io.words.pictures.neitherSvgNorPdf.wrong(file),
      io.words.pictures.neitherSvgNorPdf.right,
    );
  pictures.forEach((picture, at) => {
    writeFile(io, numbered(file, at, pictures.length), svg(picture));
  });
}
