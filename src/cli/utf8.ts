/** Text from outside is UTF-8 or it is refused: a letter that is guessed at would be kept, printed and asked about. */

export interface NotText {
  readonly line: number;
  /** In characters, from 1. */
  readonly column: number;
  /** What it seems to be instead. */
  readonly looksLike: 'UTF-16' | 'otherEncoding' | 'noText';
}

const NEWLINE = 0x0a;

/** How many characters of a line stand before the first byte that is no UTF-8; undefined when there is none. */
function charactersBefore(line: Uint8Array): number | undefined {
  const decoder = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });
  let characters = 0;
  try {
    for (const byte of line) characters += [...decoder.decode(Uint8Array.of(byte), { stream: true })].length;
    decoder.decode();
    return undefined;
  } catch {
    return characters;
  }
}

function looksLike(bytes: Uint8Array): NotText['looksLike'] {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff)) return 'UTF-16';
  return bytes.includes(0) ? 'noText' : 'otherEncoding';
}

/** The text that the bytes are, without a mark of byte order; otherwise the first place where they are none. */
export function textOf(bytes: Uint8Array): string | NotText {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    for (let line = 1, from = 0; ; line++) {
      const end = bytes.indexOf(NEWLINE, from);
      const column = charactersBefore(bytes.subarray(from, end < 0 ? bytes.length : end));
      if (column !== undefined) return { line, column: column + 1, looksLike: looksLike(bytes) };
      from = end + 1;
    }
  }
}
