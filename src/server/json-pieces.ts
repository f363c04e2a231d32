/**
 * Cuts a long JSON text into pieces that are read one by one. Reading is the program's own (`JSON.parse`), which takes a microsecond
 * for a name that it hasn't seen: a text of 2 MB full of those keeps everybody waiting for a tenth of a second, and what is nested
 * deep for longer.
 */

/** What a text may have, and the pieces that are cut out of it. */
export interface JsonBounds {
  /** Values of the whole text: one for each element of a list and each name of an object. */
  readonly values: number;
  /** Values of one piece, and of what is left around the pieces. */
  readonly inPiece: number;
  /** How many lists and objects may stand inside one another. */
  readonly deep: number;
}

export interface JsonPiece {
  readonly from: number;
  /** Behind its last letter. */
  readonly to: number;
}

export type CutJson =
  | { readonly ok: true; readonly pieces: readonly JsonPiece[] }
  | { readonly ok: false; readonly tooMany: keyof JsonBounds };

/** Bytes looked through in one step: less than a millisecond. */
const STEP = 64 * 1024;
/** Pieces are the lists and objects in a list that itself stands in the outermost value: `{"answers": [piece, piece]}`. */
const AROUND_PIECES = 2;

const code = (sign: string): number => sign.charCodeAt(0);
const [SPACE, QUOTE, ESCAPE, COMMA] = [code(' '), code('"'), code('\\'), code(',')];
const [OPENS_LIST, OPENS_OBJECT] = [code('['), code('{')];
const [CLOSES_LIST, CLOSES_OBJECT] = [code(']'), code('}')];

/** Finds where the pieces are. What isn't JSON has pieces all the same; reading them says so. */
export function* cutJson(text: Buffer, bounds: JsonBounds): Generator<undefined, CutJson> {
  const pieces: JsonPiece[] = [];
  let [depth, values, around, inPiece] = [0, 0, 0, 0];
  /** Whether what stands in the outermost value is a list, and where its present piece began. */
  let [inList, from] = [false, -1];
  let [inText, justOpened] = [false, false];
  let next = STEP;
  for (let at = 0; at < text.length; at++) {
    if (at >= next) {
      next = at + STEP;
      yield undefined;
    }
    const sign = text[at]!;
    if (inText) {
      if (sign === ESCAPE) at++;
      else if (sign === QUOTE) inText = false;
      continue;
    }
    if (sign <= SPACE) continue;
    const closes = sign === CLOSES_LIST || sign === CLOSES_OBJECT;
    // The first value of a list or object has no comma before it.
    if (sign === COMMA || (justOpened && !closes)) {
      values++;
      if (from >= 0) inPiece++;
      else around++;
      if (values > bounds.values) return { ok: false, tooMany: 'values' };
      if (inPiece > bounds.inPiece || around > bounds.inPiece) return { ok: false, tooMany: 'inPiece' };
    }
    justOpened = sign === OPENS_LIST || sign === OPENS_OBJECT;
    if (sign === QUOTE) inText = true;
    else if (justOpened) {
      depth++;
      if (depth > bounds.deep) return { ok: false, tooMany: 'deep' };
      if (depth === AROUND_PIECES) inList = sign === OPENS_LIST;
      else if (depth === AROUND_PIECES + 1 && inList) [from, inPiece] = [at, 0];
    } else if (closes) {
      depth--;
      if (depth !== AROUND_PIECES || from < 0) continue;
      pieces.push({ from, to: at + 1 });
      from = -1;
    }
  }
  return { ok: true, pieces };
}

/** Reads one JSON text. */
export type ReadJson = (text: string) => unknown;

type Place = Record<string, unknown>;
const isPlace = (value: unknown): value is Place => typeof value === 'object' && value !== null;

/**
 * Reads the pieces, one in each step, and puts them where they stood.
 *
 * @param mark - a text that nobody who sends something can know
 */
export function* readPieces(
  text: Buffer,
  pieces: readonly JsonPiece[],
  read: ReadJson,
  mark: string,
): Generator<undefined, unknown> {
  const around: Buffer[] = [];
  let done = 0;
  for (const [index, { from, to }] of pieces.entries()) {
    around.push(text.subarray(done, from), Buffer.from(`"${mark}${index}"`));
    done = to;
  }
  around.push(text.subarray(done));
  const whole = read(Buffer.concat(around).toString('utf8'));
  yield undefined;
  const left = new Set(pieces);
  const take = (piece: JsonPiece): unknown => {
    left.delete(piece);
    return read(text.subarray(piece.from, piece.to).toString('utf8'));
  };
  for (const inner of isPlace(whole) ? Object.values(whole) : []) {
    if (!isPlace(inner)) continue;
    for (const [name, value] of Object.entries(inner)) {
      if (typeof value !== 'string' || !value.startsWith(mark)) continue;
      inner[name] = take(pieces[Number(value.slice(mark.length))]!);
      yield undefined;
    }
  }
  // Of a name that comes twice the last holds. What stood under the first has to be JSON all the same.
  for (const piece of left) {
    take(piece);
    yield undefined;
  }
  return whole;
}
