/** The front matter as YAML: a plain value, and where each part of it stands. */
import { type Document, isMap, isPair, isScalar, isSeq, type Node, parseDocument, visit } from 'yaml';
import { BANK_LIMITS } from '../limits.ts';
import type { BankReport } from '../report.ts';
import type { Lines, Spot } from '../source.ts';

type KeyPath = readonly PropertyKey[];

export interface FrontTree {
  readonly value: unknown;
  /** Where the value at a path stands; the nearest part around it where there is none. */
  spotOf(path: KeyPath): Spot;
  /** Where a key itself stands. */
  keySpotOf(path: KeyPath): Spot;
}

/** YAML's own codes in our words, with what would be right. */
const YAML_ADVICE: Readonly<Record<string, string>> = {
  DUPLICATE_KEY: 'Write each key once.',
  TAB_AS_INDENT: 'Indent with spaces.',
  BLOCK_AS_IMPLICIT_KEY: 'Put a text that has a colon in it between quotation marks.',
  BAD_SCALAR_START: 'Put this text between quotation marks.',
  MISSING_CHAR: 'Close the quotation marks or brackets.',
  BAD_INDENT: 'Indent what belongs together by the same number of spaces.',
  MULTIPLE_DOCS: 'One front matter has one list of keys.',
};

/** Reads front matter; undefined when it isn't YAML, or has more in it than plain keys, lists and values (all reported). */
export function readYaml({ first: firstLine, lines }: Lines, report: BankReport): FrontTree | undefined {
  const text = lines.join('\n');
  const start: Spot = { line: firstLine, column: 1 };
  if (text.length > BANK_LIMITS.frontMatterCharacters || openBrackets(text) > BANK_LIMITS.frontMatterDepth) {
    report.add(
      'bank-too-large',
      start,
      'The front matter is too long, or too deeply nested, to be read.',
      `At most ${BANK_LIMITS.frontMatterCharacters} characters and ${BANK_LIMITS.frontMatterDepth} brackets inside one another.`,
    );
    return undefined;
  }
  const document = parseDocument(text, { prettyErrors: false, version: '1.2' });
  // The library's own counting of lines misses line ends inside texts that are wrong.
  const spotAt = (offset: number): Spot => {
    const before = text.slice(0, offset).split('\n');
    return { line: firstLine + before.length - 1, column: before.at(-1)!.length + 1 };
  };
  const mistakes = [...document.errors, ...document.warnings].toSorted((a, b) => a.pos[0] - b.pos[0]);
  // What comes after the first mistake of grammar mostly follows from it. A key that is there twice is none.
  const first = mistakes.find(({ code }) => code !== 'DUPLICATE_KEY');
  for (const { code, message, pos } of mistakes.filter((each) => !first || each.pos[0] <= first.pos[0]))
    report.add(
      'bank-front-matter',
      spotAt(pos[0]),
      `The front matter can't be read here: ${message.split('\n')[0]!.slice(0, 120)}.`,
      YAML_ADVICE[code] ?? 'Write keys and values as docs/writing-a-bank.md shows.',
    );
  if (mistakes.length > 0) return undefined;
  if (!isPlain(document, spotAt, report)) return undefined;
  const nodeAt = (path: KeyPath): Node | null => (document.getIn(path, true) ?? null) as Node | null;
  const spotOf = (path: KeyPath): Spot => {
    for (let length = path.length; length >= 0; length--) {
      const node = length === 0 ? document.contents : nodeAt(path.slice(0, length));
      if (node?.range) return spotAt(node.range[0]);
    }
    return start;
  };
  return {
    value: document.toJS() as unknown,
    spotOf,
    keySpotOf: (path) => {
      const parent = path.length === 1 ? document.contents : nodeAt(path.slice(0, -1));
      const pair = isMap(parent)
        ? parent.items.find(({ key }) => isScalar(key) && key.value === path.at(-1))
        : undefined;
      const key = pair?.key;
      return isScalar(key) && key.range ? spotAt(key.range[0]) : spotOf(path);
    },
  };
}

/** Anchors, aliases (which can make a small text large), tags and keys that aren't words are refused. */
function isPlain(document: Document, spotAt: (offset: number) => Spot, report: BankReport): boolean {
  let plain = true;
  const refuse = (offset: number, message: string): void => {
    plain = false;
    report.add('bank-front-matter', spotAt(offset), message, 'Write the value out where it is used.');
  };
  visit(document, {
    Alias: (_, alias) => refuse(alias.range?.[0] ?? 0, 'The front matter has no aliases (*name).'),
    Node: (_, node) => {
      if (isScalar(node) || isMap(node) || isSeq(node)) {
        if (node.anchor) refuse(node.range?.[0] ?? 0, 'The front matter has no anchors (&name).');
        if (node.tag && !node.tag.startsWith('tag:yaml.org,2002:'))
          refuse(node.range?.[0] ?? 0, 'The front matter has no tags (!name).');
      }
    },
    Pair: (_, pair) => {
      if (isPair(pair) && isScalar(pair.key) && typeof pair.key.value === 'string') return;
      const key = pair.key as Node | null;
      refuse(key?.range?.[0] ?? 0, 'A key of the front matter is one word.');
    },
  });
  return plain;
}

/** How many brackets are open at once, at most. Brackets in texts count too: no title needs twenty. */
function openBrackets(text: string): number {
  let open = 0;
  let most = 0;
  for (const char of text) {
    if (char === '[' || char === '{') most = Math.max(most, ++open);
    else if (char === ']' || char === '}') open = Math.max(0, open - 1);
  }
  return most;
}
