/** Pictures as a PDF, one page each, in lines and letters. Kept out of the folder's index: only who prints needs pdfkit. */
import PDFDocument from 'pdfkit';
import { MM } from '../layout/graphic-profile.ts';
import { PALETTES, type Palette } from '../palette.ts';
import { INKS } from '../picture/inks.ts';
import type { Lettering, Picture, Shape } from '../picture/types.ts';

export interface PdfOptions {
  readonly title: string;
  /** Written into the file as the time it was made: equal input gives equal bytes. */
  readonly made: Date;
  readonly palette?: Palette;
  /** Text for a reader that cannot see a page, by page. */
  readonly alternatives?: readonly string[];
}

const POINTS = 72 / 25.4;
const SCALE = POINTS / MM;

/** What the built-in Helvetica can write: Latin 1 and a few signs. Anything else comes out as a question mark. */
const UNKNOWN = /[^\x20-\x7e\xa0-\xff\u2013\u2014\u2018\u2019\u201c\u201d\u2022\u2026\u20ac]/gu;

type Doc = InstanceType<typeof PDFDocument>;

function drawShape(doc: Doc, { ink, d }: Shape, palette: Palette): void {
  const { stroke, width, fill, dash } = INKS[ink];
  doc.path(d);
  if (stroke) doc.lineWidth(width ?? 1).strokeColor(palette[stroke]);
  if (fill) doc.fillColor(palette[fill]);
  if (dash) doc.dash(dash[0], { space: dash[1] });
  if (stroke && fill) doc.fillAndStroke();
  else if (stroke) doc.stroke();
  else doc.fill();
  if (dash) doc.undash();
}

function drawText(doc: Doc, { role, text, x, baseline, size, anchor }: Lettering, palette: Palette): void {
  const bold = role === 'name' || role === 'title';
  const quiet = role !== 'name' && role !== 'title' && role !== 'text' && role !== 'rail';
  doc.font(bold ? 'Helvetica-Bold' : 'Helvetica', size).fillColor(quiet ? palette.quiet : palette.ink);
  const shown = text.replace(UNKNOWN, '?');
  const width = anchor === 'start' ? 0 : doc.widthOfString(shown);
  const left = anchor === 'end' ? x - width : anchor === 'middle' ? x - width / 2 : x;
  doc.text(shown, left, baseline, { lineBreak: false, baseline: 'alphabetic' });
}

function drawItems(doc: Doc, items: Picture['items'], palette: Palette): void {
  for (const item of items)
    switch (item.kind) {
      case 'shape':
        drawShape(doc, item, palette);
        break;
      case 'text':
        drawText(doc, item, palette);
        break;
      case 'group':
        doc.save().translate(item.x, item.y);
        drawItems(doc, item.items, palette);
        doc.restore();
    }
}

function drawPage(doc: Doc, picture: Picture, palette: Palette, alternative: string | undefined): void {
  const size: [number, number] = [picture.width * SCALE, picture.height * SCALE];
  doc.addPage({ size, margin: 0 });
  const draw = (): void => {
    doc.save().scale(SCALE).lineCap('round').lineJoin('round');
    drawItems(doc, picture.items, palette);
    doc.restore();
  };
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
    lang: 'en',
    displayTitle: true,
    info: { Title: options.title.replace(UNKNOWN, '?'), CreationDate: options.made, ModDate: options.made },
  });
  const done = new Promise<Uint8Array>((resolve, reject) => {
    const chunks: Uint8Array[] = [];
    doc.on('data', (chunk: Uint8Array) => chunks.push(chunk));
    doc.on('error', reject);
    doc.on('end', () => {
      const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
      let at = 0;
      for (const chunk of chunks) {
        bytes.set(chunk, at);
        at += chunk.length;
      }
      resolve(bytes);
    });
  });
  pictures.forEach((picture, index) => {
    drawPage(doc, picture, palette, options.alternatives?.[index]);
  });
  doc.end();
  return done;
}
