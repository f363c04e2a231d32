/** The first line of a fenced block: its kind and its settings, ` ```question id=vent-1 skill=make-contact `. */
import { nearest } from '../../circuit/index.ts';
import type { Position } from '../position.ts';
import type { BankReport } from '../report.ts';
import type { Lines } from '../source.ts';

/** The settings each kind of block has; all of them are needed unless said otherwise. */
const SETTINGS = {
  circuit: { needed: ['id'], possible: [] },
  drawing: { needed: ['circuit'], possible: [] },
  question: { needed: ['id', 'skill', 'kind'], possible: ['circuit'] },
} as const;

export type BlockKind = keyof typeof SETTINGS;
const KINDS = Object.keys(SETTINGS) as BlockKind[];

export interface Setting {
  readonly value: string;
  readonly position: Position;
}

export interface BlockHead {
  readonly kind: BlockKind;
  readonly position: Position;
  readonly settings: ReadonlyMap<string, Setting>;
}

/** A fenced block: its head and the lines between the fences. */
export interface Block {
  readonly head: BlockHead;
  readonly content: Lines;
}

const FENCE = /^[ \t]*(`{3,}|~{3,})[ \t]*/;

/** Reads a fenced block from its lines in the file; undefined when its head is wrong or it has no end (reported). */
export function readBlock({ first, lines }: Lines, report: BankReport): Block | undefined {
  const [opening = ''] = lines;
  const fence = FENCE.exec(opening);
  const mark = fence?.[1] ?? '';
  const closing = lines.length > 1 ? lines.at(-1)!.trim() : '';
  if (closing.length < mark.length || closing.replaceAll(mark[0] ?? '', '') !== '') {
    report.add({ says: 'bank-unclosed-block', fence: mark }, { line: first, column: 1 });
    return undefined;
  }
  const head = readHead(opening, first, fence?.[0].length ?? 0, report);
  return head && { head, content: { first: first + 1, lines: lines.slice(1, -1) } };
}

function readHead(line: string, number: number, from: number, report: BankReport): BlockHead | undefined {
  const words = [...line.slice(from).matchAll(/\S+/g)].map(([text], index, all) => ({
    text,
    position: { line: number, column: from + all[index]!.index + 1 },
  }));
  const [first, ...rest] = words;
  const position = first?.position ?? { line: number, column: from + 1 };
  const kind = KINDS.find((each) => each === first?.text);
  if (kind === undefined) {
    report.add(
      first
        ? {
            says: 'bank-unknown-block',
            word: first.text,
            meant: nearest(first.text, KINDS),
            kinds: KINDS,
          }
        : { says: 'bank-unknown-block.none', kinds: KINDS },
      position,
    );
    return undefined;
  }
  const { needed, possible } = SETTINGS[kind];
  const known: readonly string[] = [...needed, ...possible];
  const settings = new Map<string, Setting>();
  let sound = true;
  for (const word of rest) {
    const at = word.text.indexOf('=');
    const name = word.text.slice(0, at);
    if (at > 0 && at < word.text.length - 1 && known.includes(name) && !settings.has(name)) {
      settings.set(name, {
        value: word.text.slice(at + 1),
        position: { line: number, column: word.position.column + at + 1 },
      });
      continue;
    }
    sound = false;
    report.add(
      settings.has(name)
        ? { says: 'bank-setting.twice', name, names: known }
        : { says: 'bank-setting', word: word.text, kind, names: known },
      word.position,
    );
  }
  const missing = needed.filter((name) => !settings.has(name));
  // What wasn't understood may be the very setting that is missing.
  if (!sound) return undefined;
  for (const name of missing) report.add({ says: 'bank-missing-setting', kind, name, needed }, position);
  return missing.length === 0 ? { kind, position, settings } : undefined;
}
