/** Ink on a page: lines, squares and lettering, in points from the upper left corner. */
import type PDFDocument from 'pdfkit';
import { PALETTES } from '../../drawing/index.ts';
import { shown } from './letters.ts';

export type Doc = InstanceType<typeof PDFDocument>;
export type Face = 'plain' | 'bold' | 'code';

const FACES: Readonly<Record<Face, string>> = {
  plain: 'Helvetica',
  bold: 'Helvetica-Bold',
  code: 'Courier-Bold',
};

export const PALETTE = PALETTES.light;
export const mm = (millimetres: number): number => (millimetres * 72) / 25.4;

export interface Lettered {
  readonly size: number;
  readonly face?: Face;
  readonly quiet?: boolean;
  /** The language it is written in, where it is another one than the document's. */
  readonly language?: string;
}

/** Widths are measured once, at this size: they grow with it. */
const MEASURED = 100;

export class Pen {
  readonly doc: Doc;
  private readonly widths = new Map<string, number>();

  constructor(doc: Doc) {
    this.doc = doc;
  }

  /** How wide a text comes out, what can't be shown replaced. */
  width(text: string, { size, face = 'plain' }: Lettered): number {
    const key = `${face} ${text}`;
    let width = this.widths.get(key);
    if (width === undefined) {
      width = this.doc.font(FACES[face], MEASURED).widthOfString(shown(text)) / MEASURED;
      this.widths.set(key, width);
    }
    return width * size;
  }

  /** Words in lines no wider than `room`; a word that is wider than that is broken. */
  wrap(text: string, room: number, lettered: Lettered): string[] {
    const lines: string[] = [];
    const space = this.width('i i', lettered) - 2 * this.width('i', lettered);
    let line = '';
    let used = 0;
    const end = (): void => {
      if (line !== '') lines.push(line);
      line = '';
      used = 0;
    };
    for (const word of shown(text).split(' ')) {
      const width = this.width(word, lettered);
      if (line !== '' && used + space + width <= room) {
        line += ` ${word}`;
        used += space + width;
        continue;
      }
      end();
      for (const char of width <= room ? [word] : word) {
        const more = this.width(char, lettered);
        if (line !== '' && used + more > room) end();
        line += char;
        used += more;
      }
    }
    end();
    return lines;
  }

  /** A text cut off with an ellipsis where it is wider than `room`. */
  cut(text: string, room: number, lettered: Lettered): string {
    const whole = shown(text);
    if (this.width(whole, lettered) <= room) return whole;
    // Measured as a whole: the width of a space by itself is none.
    const cutAt = (count: number): string => `${letters.slice(0, count).join('').trimEnd()}…`;
    const letters = [...whole];
    let [least, most] = [0, letters.length];
    while (least < most) {
      const middle = Math.ceil((least + most) / 2);
      if (this.width(cutAt(middle), lettered) <= room) least = middle;
      else most = middle - 1;
    }
    return cutAt(least);
  }

  /** One line of text, its letters standing on `baseline`. */
  write(text: string, x: number, baseline: number, lettered: Lettered): void {
    const { size, face = 'plain', quiet = false, language } = lettered;
    if (language !== undefined) this.doc.markContent('Span', { lang: language });
    this.doc.font(FACES[face], size).fillColor(quiet ? PALETTE.quiet : PALETTE.ink);
    this.doc.text(shown(text), x, baseline, { lineBreak: false, baseline: 'alphabetic' });
    if (language !== undefined) this.doc.endMarkedContent();
  }

  line(x1: number, y1: number, x2: number, y2: number, weight = 0.5, dash?: number): void {
    const { doc } = this;
    doc.lineWidth(weight).strokeColor(PALETTE.ink).lineCap('butt');
    if (dash) doc.dash(dash, { space: dash });
    doc.moveTo(x1, y1).lineTo(x2, y2).stroke();
    if (dash) doc.undash();
  }

  box(x: number, y: number, width: number, height: number, weight = 0.5): void {
    this.doc.lineWidth(weight).strokeColor(PALETTE.ink).lineJoin('miter').rect(x, y, width, height).stroke();
  }
}
