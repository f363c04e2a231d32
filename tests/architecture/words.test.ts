/** Nothing that anybody reads stands outside the catalogues of src/words: sentences are found in the code as it is parsed. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Node, parseSync } from 'oxc-parser';
import { expect, it } from 'vitest';

const root = resolve(fileURLToPath(import.meta.url), '../../..');

/** Like docs/api.md, which repeats them: for whoever writes programs, in English. */
const SUMMARIES = 'what each route is for, in the description of the interface';

/**
 * Where English stands and is no word of the program to somebody who uses it. A folder ends in a slash; of a file the
 * literals that may stand in it can be named.
 */
const EXCEPTIONS: Readonly<Record<string, { readonly why: string; readonly only?: readonly string[] }>> = {
  'src/generator/': { why: 'the texts of circuits that are made: content, as a bank is' },
  'src/drawing/svg/draw-svg.ts': {
    why: 'SVG and its styles',
    only: [
      "Helvetica,Arial,'Liberation Sans',sans-serif",
      'font-size: px',
      ' style="font-size: px"',
      'width=" mm" height=" mm"',
      '<svg xmlns="http://www.w3.org/2000/svg"   viewBox="0 0    " role="img" >',
      '<rect width=" " height=" " fill=" "/>',
    ],
  },
  'src/store/postgres-pool.ts': {
    why: 'the text by which the database driver is understood',
    only: ['Query read timeout'],
  },
  'src/circuit/notation/options.ts': {
    why: 'the notation',
    only: ['make Hand break Hand+Auto 21-22'],
  },
  'src/circuit/notation/faults.ts': { why: 'the notation', only: ['  dirty   ohm'] },
  'src/homework/interchange/marks-csv.ts': {
    why: 'names of columns, which other programs read',
    only: ['out of', 'changed by tutor'],
  },
  'src/homework/interchange/qti/dialect.ts': { why: 'a name that the standard gives', only: ['QTI Package'] },
  'src/homework/interchange/qti/xml.ts': {
    why: 'XML',
    only: ['<?xml version="1.0" encoding="UTF-8"?>\n \n'],
  },
  'src/server/openapi.ts': {
    why: 'the description of the interface: documentation, as docs/api.md, in English',
  },
  'src/server/create-server.ts': { why: 'what is logged', only: ['hung up', 'request aborted'] },
  'src/server/people/passwords.ts': {
    why: 'a password that nobody has',
    only: ['nobody has this password'],
  },
  'src/server/work/work.ts': { why: 'what is logged', only: ['The job   was ended:  .'] },
  'src/server/problems.ts': { why: 'the table of docs/api.md: documentation of the interface' },
  'shared/api.ts': { why: SUMMARIES },
  'shared/api-entering.ts': { why: SUMMARIES },
  'shared/api-homework.ts': { why: SUMMARIES },
  'shared/api-marked-homework.ts': { why: SUMMARIES },
  'shared/api-own-homework.ts': { why: SUMMARIES },
  'shared/api-people.ts': { why: SUMMARIES },
  'shared/api-reports.ts': { why: SUMMARIES },
};

/** Attributes that are read out, shown, or put into a field. */
const SHOWN = new Set([
  'aria-label',
  'title',
  'placeholder',
  'alt',
  'label',
  'data-of',
  'caption',
  'summary',
  'text',
]);
/** Attributes, and properties of objects, that hold names for machines. */
const FOR_MACHINES = new Set([
  'class',
  'className',
  'style',
  'd',
  'viewBox',
  'rel',
  'sizes',
  'media',
  'accept',
  'points',
]);
/** What only a fault of the program raises. */
const FAULTS = new Set(['RangeError', 'TypeError']);

const WORDS = /[A-Za-z]{2,}[,.:;!?)”’"]* +[“‘"(]*[A-Za-z]{2,}/;
const LETTER = /\p{L}/u;
/** Commands as they are typed, which are the same in every language; the database's language; media queries; what has no words. */
const NO_WORDS =
  /^\s*(?:DATABASE_URL=\S+ )?polewise |^(?:select|update|delete from|BEGIN)(?: |$)|^is not$|^\w+ as \w+$|^double precision$|^\([a-z-]+: [a-z]+\)$|^(?:Polewise|V)$/;

/** What one program says to another: headers, a status line, the frame of a page. */
const PROTOCOL =
  /; charset=utf-8(?:\r\n)?$|; HttpOnly; SameSite=|^attachment; filename=|^content-length: |^public, max-age=|^<!doctype html>/;

type Any = Node & Record<string, unknown>;
const isNode = (value: unknown): value is Any =>
  typeof value === 'object' && value !== null && typeof (value as Any).type === 'string';

const nameIn = (node: unknown): string =>
  isNode(node) ? String(node['name'] ?? (isNode(node['namespace']) ? '' : '')) : '';

/** The text of a literal, with a blank for each value in it. */
function textOf(node: Any): string | undefined {
  if (node.type === 'Literal') return typeof node.value === 'string' ? node.value : undefined;
  if (node.type === 'TemplateLiteral')
    return (node as unknown as { quasis: { value: { cooked: string } }[] }).quasis
      .map(({ value }) => value.cooked)
      .join(' ');
  if (node.type === 'JSXText') return (node as unknown as { value: string }).value;
  return undefined;
}

/** Whether what is below this node is nothing that is read. */
function passedOver(node: Any): boolean {
  switch (node.type) {
    case 'ImportDeclaration':
    case 'ExportAllDeclaration':
    case 'ImportExpression':
    case 'TSLiteralType':
    case 'TSEnumMember':
      return true;
    case 'NewExpression':
      return FAULTS.has(nameIn(node['callee']));
    case 'TaggedTemplateExpression':
      return nameIn(node['tag']) === 'sql';
    case 'JSXAttribute':
      return FOR_MACHINES.has(nameIn(node['name']));
    case 'Property':
      // Where a fact is known from: documentation, which docs/ repeats.
      return nameIn(node['key']) === 'source';
    default:
      return false;
  }
}

/** Literals in a file that read like words to somebody. */
function wordsIn(file: string): { readonly line: number; readonly text: string }[] {
  const source = readFileSync(join(root, file), 'utf8');
  const { program, errors } = parseSync(file, source);
  expect(errors, file).toEqual([]);
  const found: { line: number; text: string }[] = [];
  const look = (value: unknown, shown: boolean): void => {
    if (Array.isArray(value)) {
      for (const each of value) look(each, shown);
      return;
    }
    if (!isNode(value) || passedOver(value)) return;
    const text = textOf(value);
    const read = value.type === 'JSXText' || shown ? LETTER : WORDS;
    if (text !== undefined && read.test(text) && !NO_WORDS.test(text.trim()) && !PROTOCOL.test(text))
      found.push({ line: source.slice(0, value.start).split('\n').length, text });
    const within = value.type === 'JSXAttribute' ? SHOWN.has(nameIn(value['name'])) : false;
    for (const [key, child] of Object.entries(value))
      if (typeof child === 'object')
        look(child, within && key === 'value' && isNode(child) && child.type === 'Literal');
  };
  look(program, false);
  return found;
}

function filesIn(folder: string): string[] {
  return readdirSync(join(root, folder)).flatMap((name) => {
    const path = `${folder}/${name}`;
    if (statSync(join(root, path)).isDirectory()) return path === 'src/words' ? [] : filesIn(path);
    return /\.tsx?$/.test(name) ? [relative(root, join(root, path))] : [];
  });
}

const exceptionFor = (file: string) =>
  Object.entries(EXCEPTIONS).find(([place]) =>
    place.endsWith('/') ? file.startsWith(place) : file === place,
  )?.[1];

it('no sentence stands outside the catalogues', () => {
  const files = ['src', 'shared', 'tools', 'bin'].flatMap(filesIn);
  expect(files.length).toBeGreaterThan(500);
  const wrong = files.flatMap((file) => {
    const exception = exceptionFor(file);
    if (exception && !exception.only) return [];
    return wordsIn(file)
      .filter(({ text }) => !exception?.only?.includes(text))
      .map(({ line, text }) => `${file}:${line} ${JSON.stringify(text.slice(0, 90))}`);
  });
  expect(wrong).toEqual([]);
});

it('every exception is one that is still there', () => {
  const files = ['src', 'shared', 'tools', 'bin'].flatMap(filesIn);
  const idle = Object.entries(EXCEPTIONS).filter(([place, { only }]) => {
    const own = files.filter((file) => (place.endsWith('/') ? file.startsWith(place) : file === place));
    const texts = own.flatMap((file) => wordsIn(file).map(({ text }) => text));
    return only ? only.some((text) => !texts.includes(text)) : texts.length === 0;
  });
  expect(idle).toEqual([]);
});

/** Texts of libraries and engines are in English, and others in each version. Where they are looked at, and why that tells nobody. */
const LIBRARIES: Readonly<Record<string, string>> = {
  'src/web/': 'errors that have the words of the page, or are faults of the program',
  'src/cli/program.ts': 'a fault of the program',
  'src/cli/commands/homework/mark.ts': 'a problem that has been told',
  'src/cli/command-trouble.ts': 'names are read out of it that nothing else gives',
  'src/circuit/issues.ts': 'the name of a form, from shared/form-name.ts',
  'src/words/form-said.ts': 'the name of a form, from shared/form-name.ts',
  'src/store/failures.ts': 'an error is known by it that has no code; and it is kept for the log',
  'src/store/postgres-pool.ts': 'an error is known by it that has no code',
  'src/store/migrate.ts': 'an error is known by it that has no code',
};

it('what a library says of an error reaches nobody', () => {
  const words = readdirSync(join(root, 'src/words')).filter((name) => name.endsWith('.ts'));
  const files = [...['src', 'shared'].flatMap(filesIn), ...words.map((name) => `src/words/${name}`)];
  const taken = files.filter((file) =>
    /\b(?:error|issue|cause|exception|mistake)\??\.message\b|\bmessage\b[^;{}]*\} = (?:error|issue|cause);/.test(
      readFileSync(join(root, file), 'utf8'),
    ),
  );
  const placeOf = (file: string): string =>
    Object.keys(LIBRARIES).find((place) => (place.endsWith('/') ? file.startsWith(place) : file === place)) ??
    file;
  expect([...new Set(taken.map(placeOf))].sort()).toEqual(Object.keys(LIBRARIES).sort());
});
