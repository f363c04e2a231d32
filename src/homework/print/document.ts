/** A document of A4 pages: opened, its pages drawn, ended. */
import PDFDocument from 'pdfkit';
import { bytesOf } from '../../drawing/pdf/bytes-of.ts';
import type { Doc } from '../../drawing/pdf/draw-picture.ts';
import type { Words } from '../../words/index.ts';
import type { Placed } from './flow.ts';
import { shown } from './letters.ts';
import { mm, Pen } from './pen.ts';

/** A4 upright: more on the left, for binding. */
export const PAGE = {
  width: mm(210),
  height: mm(297),
  left: mm(20),
  right: mm(12),
  top: mm(12),
  bottom: mm(12),
} as const;
export const WIDTH = PAGE.width - PAGE.left - PAGE.right;

export interface Printing {
  readonly pen: Pen;
  /** A new page, with what is drawn on it that is no text of its own: frames, page numbers, the foot. */
  page(around: (pen: Pen) => void): void;
  /** Pieces on the page begun last. */
  place(pieces: readonly Placed[], x: number, top: number): void;
  /** An entry in the document's list of contents, for the page begun last. */
  entry(title: string): void;
  /** The file; where it was handed out in pieces, nothing more. */
  end(): Promise<Uint8Array>;
}

/** Takes the file piece by piece, as it is made. */
export type Out = (piece: Uint8Array) => void;

const handedOut = (doc: Doc, out: Out): Promise<Uint8Array> =>
  new Promise((resolve, reject) => {
    doc.on('data', out);
    doc.on('error', reject);
    doc.on('end', () => resolve(new Uint8Array()));
  });

/** @param made - written into the file: equal input gives equal pages */
export function printing(words: Words, title: string, made: Date, out?: Out): Printing {
  const doc = new PDFDocument({
    autoFirstPage: false,
    pdfVersion: '1.5',
    tagged: true,
    lang: words.speech.language,
    displayTitle: true,
    info: { Title: shown(title), CreationDate: made, ModDate: made },
  });
  const bytes = out ? handedOut(doc, out) : bytesOf(doc);
  const pen = new Pen(doc);
  return {
    pen,
    page(around) {
      doc.addPage({ size: [PAGE.width, PAGE.height], margin: 0 });
      doc.markContent('Artifact', { type: 'Layout' });
      around(pen);
      doc.endMarkedContent();
    },
    place(pieces, x, top) {
      for (const { piece, y } of pieces) {
        const { draw, tag, alt } = piece;
        if (!draw) continue;
        const draws = (): void => draw(pen, x, top + y);
        doc.addStructure(doc.struct(tag, alt === undefined ? {} : { alt }, draws));
      }
    },
    entry: (text) => {
      doc.outline.addItem(shown(text));
    },
    end() {
      doc.end();
      return bytes;
    },
  };
}

/** The foot of a page: what this is and is not (docs/paper.md), and on the right what page it is. */
export function foot(pen: Pen, { paper }: Words, right: string): void {
  const y = PAGE.height - PAGE.bottom - mm(7);
  pen.line(PAGE.left, y, PAGE.left + WIDTH, y);
  const small = { size: 6.5, quiet: true };
  const bold = { size: 8, face: 'bold' } as const;
  const space = pen.width(right, bold);
  pen.wrap(paper.safety, WIDTH - space - mm(8), small).forEach((line, index) => {
    pen.write(line, PAGE.left, y + mm(3) + index * mm(2.8), small);
  });
  pen.write(right, PAGE.left + WIDTH - space, y + mm(4.4), bold);
}
/** Height that the foot takes. */
export const FOOT = mm(9);
