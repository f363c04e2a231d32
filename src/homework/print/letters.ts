/** What the letters of a print can show. The built-in faces have Western Europe's letters (Windows code page 1252) and no others. */

const KNOWN = /^[\x20-\x7e\xa1-\xff€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ]$/u;

/** Letters that are one piece in Unicode and have a plain letter to stand for them. */
const PLAIN: Readonly<Record<string, string>> = {
  Ł: 'L',
  ł: 'l',
  Đ: 'D',
  đ: 'd',
  Ħ: 'H',
  ħ: 'h',
  Ŧ: 'T',
  ŧ: 't',
  ı: 'i',
  Ŋ: 'N',
  ŋ: 'n',
  '−': '-',
  '‐': '-',
  '‑': '-',
  '‒': '-',
  '―': '—',
  ʼ: '’',
  ẞ: 'SS',
};

/** Control characters, and those that join, hide or turn round what stands beside them: nothing of them is seen on paper. */
const UNSEEN = /[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu;
const MARKS = /\p{Mn}/gu;

export interface Shown {
  readonly text: string;
  /** Nothing of it is lost: at most an accent is. */
  readonly whole: boolean;
}

/**
 * A text as it can be printed: where a letter isn't there, the plain letter under its accents, else a question mark. Runs
 * of white space become one space.
 */
export function shownOf(text: string): Shown {
  let whole = true;
  const letter = (char: string): string => {
    if (KNOWN.test(char)) return char;
    const bare = (PLAIN[char] ?? char.normalize('NFD')).replace(MARKS, '');
    if (bare !== '' && [...bare].every((each) => KNOWN.test(each) || PLAIN[each] !== undefined))
      return [...bare].map((each) => PLAIN[each] ?? each).join('');
    if (/^\p{M}$/u.test(char)) return '';
    whole = false;
    return '?';
  };
  const shown = [...text.normalize('NFC').replace(/\s/gu, ' ').replace(UNSEEN, '')].map(letter).join('');
  return { text: shown.replace(/ {2,}/g, ' ').trim(), whole };
}

export const shown = (text: string): string => shownOf(text).text;

/** A name for a cell of its own; empty where none of its letters can be shown, so that it is written in by hand. */
export function nameShown(name: string): string {
  const { text, whole } = shownOf(name);
  return whole || /[^? .'-]/.test(text) ? text : '';
}
