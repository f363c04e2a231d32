/** A picture's shapes and letters on a page of a PDF, wherever somebody wants it. */
import type PDFDocument from 'pdfkit';
import { MM } from '../layout/graphic-profile.ts';
import type { Palette } from '../palette.ts';
import { INKS } from '../picture/inks.ts';
import type { Lettering, Picture, Shape } from '../picture/types.ts';

export type Doc = InstanceType<typeof PDFDocument>;

const POINTS = 72 / 25.4;
/** Points that a unit of the pictures has: a quarter of a millimetre, as laid out for paper. */
export const SCALE = POINTS / MM;

/** What the built-in Helvetica can write: Latin 1 and a few signs. Anything else comes out as a question mark. */
const UNKNOWN = /[^\x20-\x7e\xa0-\xff\u2013\u2014\u2018\u2019\u201c\u201d\u2022\u2026\u20ac]/gu;

export const inPdfLetters = (text: string): string => text.replace(UNKNOWN, '?');

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

function drawText(
  doc: Doc,
  { role, text, x, baseline, size, anchor, onLit }: Lettering,
  palette: Palette,
): void {
  const bold = role === 'name' || role === 'title';
  const quiet = role !== 'name' && role !== 'title' && role !== 'text' && role !== 'rail';
  doc
    .font(bold ? 'Helvetica-Bold' : 'Helvetica', size)
    .fillColor(onLit ? palette.onLit : quiet ? palette.quiet : palette.ink);
  const shown = inPdfLetters(text);
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

/**
 * Draws a picture with its corner at a place of the page.
 *
 * @param scale - points that a unit of the picture gets; `SCALE` draws it in the size it was laid out for
 */
export function drawPicture(
  doc: Doc,
  { items }: Picture,
  palette: Palette,
  { x, y, scale }: { readonly x: number; readonly y: number; readonly scale: number },
): void {
  doc.save().translate(x, y).scale(scale).lineCap('round').lineJoin('round');
  drawItems(doc, items, palette);
  doc.restore();
}
