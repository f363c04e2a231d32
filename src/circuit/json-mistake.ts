/**
 * Where a text stops being JSON (RFC 8259). `JSON.parse` tells it in a sentence of its own, another one in each engine and often
 * without the place.
 */

export interface JsonMistake {
  readonly line: number;
  readonly column: number;
  /** What stands there and can't; undefined at the end of the text. */
  readonly found: string | undefined;
}

/** What has to come next; a list or an object that has just been opened may end as well. */
interface Next {
  readonly what: 'value' | 'name' | 'comma';
  readonly orEnd?: boolean;
}

const BLANK = /[ \t\n\r]*/y;
const WORD = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;

/** Behind what a pattern finds at a place; the place itself where it finds nothing. */
function behind(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

interface Found {
  readonly at: number;
  readonly wrong?: boolean;
}

/** Behind the string that begins at a place. */
function behindString(text: string, from: number): Found {
  let at = from + 1;
  while (at < text.length) {
    const sign = text[at]!;
    if (sign === '"') return { at: at + 1 };
    if (sign < ' ') break;
    const next = sign === '\\' ? behind(ESCAPE, text, at) : at + 1;
    if (next === at) break;
    at = next;
  }
  return { at, wrong: true };
}

/** Walks over a text, with what is open in it. */
class Walk {
  private readonly open: ('{' | '[')[] = [];
  private next: Next = { what: 'value' };

  /** Takes what stands at a place, which is no blank. */
  take(text: string, at: number): Found {
    const sign = text[at]!;
    const { what, orEnd } = this.next;
    if (what === 'comma') return this.takeNext(sign, at);
    if (orEnd && this.closes(sign)) return this.closed(at);
    const name = what === 'name';
    if (sign === '"') {
      const { at: end, wrong } = behindString(text, at);
      if (wrong || !name) return this.ended({ at: end, ...(wrong ? { wrong } : {}) });
      const colon = behind(BLANK, text, end);
      this.next = { what: 'value' };
      return text[colon] === ':' ? { at: colon + 1 } : { at: colon, wrong: true };
    }
    if (name) return { at, wrong: true };
    if (sign === '{' || sign === '[') {
      this.open.push(sign);
      this.next = { what: sign === '{' ? 'name' : 'value', orEnd: true };
      return { at: at + 1 };
    }
    const end = behind(WORD, text, at);
    return this.ended(end === at ? { at, wrong: true } : { at: end });
  }

  /** Whether the text can end here. */
  get done(): boolean {
    return this.next.what === 'comma' && this.open.length === 0;
  }

  private takeNext(sign: string, at: number): Found {
    const inside = this.open.at(-1);
    if (inside !== undefined && this.closes(sign)) return this.closed(at);
    if (inside === undefined || sign !== ',') return { at, wrong: true };
    this.next = { what: inside === '{' ? 'name' : 'value' };
    return { at: at + 1 };
  }

  private closes(sign: string): boolean {
    return sign === (this.open.at(-1) === '{' ? '}' : ']');
  }

  private closed(at: number): Found {
    this.open.pop();
    return this.ended({ at: at + 1 });
  }

  private ended(found: Found): Found {
    this.next = { what: 'comma' };
    return found;
  }
}

function offsetOf(text: string): number | undefined {
  const walk = new Walk();
  let at = behind(BLANK, text, 0);
  while (at < text.length) {
    const { at: next, wrong } = walk.take(text, at);
    if (wrong) return next;
    at = behind(BLANK, text, next);
  }
  return walk.done ? undefined : text.length;
}

/** The first place at which a text is no JSON any more; undefined where it is JSON. */
export function jsonMistake(text: string): JsonMistake | undefined {
  const at = offsetOf(text);
  if (at === undefined) return undefined;
  const before = text.slice(0, at).split(/\r\n|\n|\r/);
  const found = at < text.length ? String.fromCodePoint(text.codePointAt(at)!) : undefined;
  return { line: before.length, column: before.at(-1)!.length + 1, found };
}

/**
 * Reads with `read`, and looks for the mistake only where that fails: what is JSON is gone through once.
 *
 * @throws whatever `read` throws where the text is JSON all the same
 */
export function readJson(
  text: string,
  read: (text: string) => unknown = JSON.parse,
): { readonly ok: true; readonly value: unknown } | { readonly ok: false; readonly mistake: JsonMistake } {
  try {
    return { ok: true, value: read(text) };
  } catch (error) {
    const mistake = jsonMistake(text);
    if (!mistake) throw error;
    return { ok: false, mistake };
  }
}
