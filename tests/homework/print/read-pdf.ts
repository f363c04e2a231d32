/** The texts of a PDF page by page, as they were written: one entry for each piece of text, in the order drawn. */
import { inflateSync } from 'node:zlib';

interface Objects {
  readonly get: (number: number) => string;
  readonly all: readonly string[];
}

function objectsOf(file: string): Objects {
  const found = new Map<number, string>();
  for (const [, number = '', body = ''] of file.matchAll(/\n(\d+) 0 obj\n([\s\S]*?)\nendobj/g))
    found.set(Number(number), body);
  return { get: (number) => found.get(number) ?? '', all: [...found.values()] };
}

/** Code page 1252 where it differs from Latin 1, as far as prints use it. */
const WINDOWS: Readonly<Record<number, string>> = {
  128: '€',
  133: '…',
  138: 'Š',
  142: 'Ž',
  145: '‘',
  146: '’',
  147: '“',
  148: '”',
  150: '–',
  151: '—',
  154: 'š',
  158: 'ž',
};

const textOf = (hex: string): string =>
  [...Buffer.from(hex, 'hex')].map((byte) => WINDOWS[byte] ?? String.fromCharCode(byte)).join('');

/** A stream by its length: compressed bytes may end as a line does. */
function streamOf(body: string): string {
  const begin = /stream\r?\n/.exec(body);
  const [, length = '0'] = /\/Length (\d+)/.exec(body) ?? [];
  if (!begin) return '';
  const from = begin.index + begin[0].length;
  const raw = body.slice(from, from + Number(length));
  return body.includes('/FlateDecode') ? inflateSync(Buffer.from(raw, 'latin1')).toString('latin1') : raw;
}

export interface ReadPdf {
  /** Texts by page. */
  readonly pages: readonly (readonly string[])[];
  /** What draws each page. */
  readonly streams: readonly string[];
  /** The whole file, a letter for each byte. */
  readonly file: string;
}

export function readPdf(bytes: Uint8Array): ReadPdf {
  const file = Buffer.from(bytes).toString('latin1');
  const objects = objectsOf(file);
  const streams = objects.all
    .filter((body) => /\/Type \/Page\b(?!s)/.test(body))
    .map((body) => {
      const [, contents = ''] = /\/Contents (\d+) 0 R/.exec(body) ?? [];
      return streamOf(objects.get(Number(contents)));
    });
  const pages = streams.map((stream) =>
    [...stream.matchAll(/\[([^\]]*)\] TJ/g)].map(([, parts = '']) =>
      [...parts.matchAll(/<([0-9a-f]*)>/gi)].map(([, hex = '']) => textOf(hex)).join(''),
    ),
  );
  return { pages, streams, file };
}

/** A page's texts as one, so that what was wrapped is found again. */
export const together = (page: readonly string[]): string => page.join(' ').replace(/\s+/g, ' ');

/** Without the number that every file has of its own. */
export const withoutId = (bytes: Uint8Array): string =>
  Buffer.from(bytes)
    .toString('latin1')
    .replace(/\/ID \[[\s\S]*?\]/, '');
