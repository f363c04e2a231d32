/** Pictures as a PDF, one page each, in lines and letters. Kept out of the folder's index: only who prints needs pdfkit. */
import PDFDocument from 'pdfkit';
import { PALETTES, type Palette } from '../palette.ts';
import type { Picture } from '../picture/types.ts';
import { bytesOf } from './bytes-of.ts';
import { type Doc, drawPicture, inPdfLetters, SCALE } from './draw-picture.ts';

export interface PdfOptions {
  readonly title: string;
  /** That the title and the alternatives are in: `en`. */
  readonly language: string;
  /** Written into the file as the time it was made: equal input gives equal bytes. */
  readonly made: Date;
  readonly palette?: Palette;
  /** Text for a reader that cannot see a page, by page. */
  readonly alternatives?: readonly string[];
}

function drawPage(doc: Doc, picture: Picture, palette: Palette, alternative: string | undefined): void {
  const size: [number, number] = [picture.width * SCALE, picture.height * SCALE];
  doc.addPage({ size, margin: 0 });
  const draw = (): void => drawPicture(doc, picture, palette, { x: 0, y: 0, scale: SCALE });
  if (alternative === undefined) draw();
  else doc.addStructure(doc.struct('Figure', { alt: alternative }, draw));
}

/** A unit of the pictures is a quarter of a millimetre, as laid out for A4. */
export function drawPdf(pictures: readonly Picture[], options: PdfOptions): Promise<Uint8Array> {
  const palette = options.palette ?? PALETTES.light;
  const doc = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.5',
    tagged: true,
    lang: options.language,
    displayTitle: true,
    info: { Title: inPdfLetters(options.title), CreationDate: options.made, ModDate: options.made },
  });
  const done = bytesOf(doc);
  pictures.forEach((picture, index) => {
    drawPage(doc, picture, palette, options.alternatives?.[index]);
  });
  doc.end();
  return done;
}
