/** The front matter as YAML: a plain value, and where each part of it stands. */
import { type Document, isMap, isPair, isScalar, isSeq, type Node, parseDocument, visit } from 'yaml';
import { BANK_LIMITS } from '../limits.ts';
import type { Position } from '../position.ts';
import type { BankReport } from '../report.ts';
import type { Lines } from '../source.ts';

type KeyPath = readonly PropertyKey[];

export interface FrontTree {
  readonly value: unknown;
  /** Where the value at a path stands; the nearest part around it where there is none. */
  positionOf(path: KeyPath): Position;
  /** Where a key itself stands. */
  keyPositionOf(path: KeyPath): Position;
}

/** Reads front matter; undefined when it isn't YAML, or has more in it than plain keys, lists and values (all reported). */
export function readYaml({ first: firstLine, lines }: Lines, report: BankReport): FrontTree | undefined {
  const text = lines.join('\n');
  const start: Position = { line: firstLine, column: 1 };
  if (text.length > BANK_LIMITS.frontMatterCharacters || openBrackets(text) > BANK_LIMITS.frontMatterDepth) {
    report.add(
      {
        says: 'bank-too-large.frontMatter',
        characters: BANK_LIMITS.frontMatterCharacters,
        depth: BANK_LIMITS.frontMatterDepth,
      },
      start,
    );
    return undefined;
  }
  const document = parseDocument(text, { prettyErrors: false, version: '1.2' });
  // The library's own counting of lines misses line ends inside texts that are wrong.
  const positionAt = (offset: number): Position => {
    const before = text.slice(0, offset).split('\n');
    return { line: firstLine + before.length - 1, column: before.at(-1)!.length + 1 };
  };
  const mistakes = [...document.errors, ...document.warnings].toSorted((a, b) => a.pos[0] - b.pos[0]);
  // What comes after the first mistake of grammar mostly follows from it. A key that is there twice is none.
  const first = mistakes.find(({ code }) => code !== 'DUPLICATE_KEY');
  for (const { code, pos } of mistakes.filter((each) => !first || each.pos[0] <= first.pos[0]))
    report.add({ says: 'bank-front-matter', code }, positionAt(pos[0]));
  if (mistakes.length > 0) return undefined;
  if (!isPlain(document, positionAt, report)) return undefined;
  const nodeAt = (path: KeyPath): Node | null => (document.getIn(path, true) ?? null) as Node | null;
  const positionOf = (path: KeyPath): Position => {
    for (let length = path.length; length >= 0; length--) {
      const node = length === 0 ? document.contents : nodeAt(path.slice(0, length));
      if (node?.range) return positionAt(node.range[0]);
    }
    return start;
  };
  return {
    value: document.toJS() as unknown,
    positionOf,
    keyPositionOf: (path) => {
      const parent = path.length === 1 ? document.contents : nodeAt(path.slice(0, -1));
      const pair = isMap(parent)
        ? parent.items.find(({ key }) => isScalar(key) && key.value === path.at(-1))
        : undefined;
      const key = pair?.key;
      return isScalar(key) && key.range ? positionAt(key.range[0]) : positionOf(path);
    },
  };
}

/** Anchors, aliases (which can make a small text large), tags and keys that aren't words are refused. */
function isPlain(document: Document, positionAt: (offset: number) => Position, report: BankReport): boolean {
  let plain = true;
  const refuse = (offset: number, what: 'alias' | 'anchor' | 'tag' | 'key'): void => {
    plain = false;
    report.add({ says: `bank-front-matter.${what}` }, positionAt(offset));
  };
  visit(document, {
    Alias: (_, alias) => refuse(alias.range?.[0] ?? 0, 'alias'),
    Node: (_, node) => {
      if (isScalar(node) || isMap(node) || isSeq(node)) {
        if (node.anchor) refuse(node.range?.[0] ?? 0, 'anchor');
        if (node.tag && !node.tag.startsWith('tag:yaml.org,2002:')) refuse(node.range?.[0] ?? 0, 'tag');
      }
    },
    Pair: (_, pair) => {
      if (isPair(pair) && isScalar(pair.key) && typeof pair.key.value === 'string') return;
      const key = pair.key as Node | null;
      refuse(key?.range?.[0] ?? 0, 'key');
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
