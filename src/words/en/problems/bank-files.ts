/** What can be wrong with a bank's files: their front matter, their lessons, their recipes, and one beside another. */
import type { ErrorCode } from 'yaml';
import { speech } from '../speech.ts';
import { asMeant, type Slip, shown } from './parts.ts';

/** What each key of the front matter holds. */
const KEYS = {
  id: 'a name of small letters, digits and hyphens, such as make-and-break (64 characters at most)',
  language: 'the tag of the language that the file is written in (BCP 47), such as en, de-AT or zh-Hant',
  title: 'a text of one line (120 characters at most)',
  summary: 'a text of one line (300 characters at most)',
  order: "the topic's place among the topics: a whole number from 1 to 10000",
  skills: 'a list of 1 to 50 skills, each with id, title, needs and recipes',
  needs: 'a list of the skills it stands on, such as [make-contact] (20 at most; [] or nothing for none)',
  recipes: 'a list of 1 to 20 recipes, each with families, kinds and size',
  lesson:
    'the heading of the section of the lesson that helps with it, as it is written there (120 characters at most)',
  families: 'a list of families of circuits, such as [status-pair] (40 at most)',
  kinds: 'a list of kinds of question, such as [lamp-states]',
  size: 'two whole numbers from 1 to 8, the smallest and the largest circuit, such as [1, 3]',
  share: 'a number above 0, 100 at most; 1 when it is left out',
};
export type FrontKey = keyof typeof KEYS;

interface OfKey {
  readonly key: FrontKey;
  /** What the value can be, where that is a list. */
  readonly choices: readonly string[];
}
const meaning = ({ key, choices }: OfKey): string =>
  choices.length === 0
    ? `${key} is ${KEYS[key]}.`
    : `${key} is ${KEYS[key]}. It is one of ${choices.join(', ')}.`;

const AS_SHOWN = 'Write keys and values as docs/writing-a-bank.md shows.';
const WRITE_OUT = 'Write the value out where it is used.';
const SAME_SPACES = 'Indent what belongs together by the same number of spaces.';
const QUOTE_TEXT = 'Put this text between quotation marks.';

/** What isn't YAML, by the codes of the library that reads it. */
const YAML: Readonly<Record<ErrorCode, readonly [wrong: string, right: string]>> = {
  ALIAS_PROPS: ['The front matter has no aliases (*name).', WRITE_OUT],
  BAD_ALIAS: ['The front matter has no aliases (*name).', WRITE_OUT],
  BAD_COLLECTION_TYPE: ['A value has another type here than its tag says.', AS_SHOWN],
  BAD_DIRECTIVE: ['The front matter has no lines that begin with %.', AS_SHOWN],
  BAD_DQ_ESCAPE: [
    'What stands after this backslash means nothing.',
    'Write a backslash twice, or put the text between apostrophes.',
  ],
  BAD_INDENT: ['This line is indented otherwise than those that it belongs to.', SAME_SPACES],
  BAD_PROP_ORDER: ['The front matter has no anchors (&name) and no tags (!name).', WRITE_OUT],
  BAD_SCALAR_START: ["A text can't begin with this sign.", QUOTE_TEXT],
  BLOCK_AS_IMPLICIT_KEY: [
    'Here stands a second colon on one line.',
    'Put a text that has a colon in it between quotation marks.',
  ],
  BLOCK_IN_FLOW: ['Between brackets there is no list with hyphens and no text over several lines.', AS_SHOWN],
  DUPLICATE_KEY: ['This key stands here twice.', 'Write each key once.'],
  IMPOSSIBLE: ["The front matter can't be read from here on.", AS_SHOWN],
  KEY_OVER_1024_CHARS: ['A key is one word, and this one has no end.', AS_SHOWN],
  MISSING_CHAR: [
    'Something is missing here: a colon, a comma, a blank, or what closes quotation marks or brackets.',
    'Close the quotation marks or brackets.',
  ],
  MULTILINE_IMPLICIT_KEY: ['A key stands on one line, with its colon.', AS_SHOWN],
  MULTIPLE_ANCHORS: ['The front matter has no anchors (&name).', WRITE_OUT],
  MULTIPLE_DOCS: [
    'The front matter ends here, and something follows.',
    'One front matter has one list of keys.',
  ],
  MULTIPLE_TAGS: ['The front matter has no tags (!name).', WRITE_OUT],
  NON_STRING_KEY: ['A key of the front matter is one word.', WRITE_OUT],
  RESOURCE_EXHAUSTION: ['The front matter is too deeply nested to be read.', AS_SHOWN],
  TAB_AS_INDENT: ['This line is indented with a tab.', 'Indent with spaces.'],
  TAG_RESOLVE_FAILED: ['The front matter has no tags (!name).', WRITE_OUT],
  UNEXPECTED_TOKEN: ["This can't stand here.", AS_SHOWN],
};

const SEVERAL_TOPICS = 'Divide it into several topics.';

export const bankFileProblems = {
  'bank-too-many-problems': ({ most }: { most: number }) => ({
    wrong: `There are more than ${most} mistakes; the others are not listed.`,
    right: 'Correct these first and check the file again.',
  }),
  'bank-too-large.files': ({ files, most }: { files: number; most: number }) => ({
    wrong: `There are ${files} files; at most ${most} are read.`,
    right: 'Divide them into several banks.',
  }),
  'bank-too-large.characters': ({ characters, most }: { characters: number; most: number }) => ({
    wrong: `This file is too long to be read: ${characters} characters, at most ${most}.`,
    right: SEVERAL_TOPICS,
  }),
  'bank-too-large.lines': ({ lines, most }: { lines: number; most: number }) => ({
    wrong: `There are ${lines} lines; at most ${most} are read.`,
    right: SEVERAL_TOPICS,
  }),
  'bank-too-large.line': ({ characters, most }: { characters: number; most: number }) => ({
    wrong: `This line has ${characters} characters; at most ${most} are read.`,
    right: 'Break it into several lines.',
  }),
  'bank-too-large.indentation': ({ most }: { most: number }) => ({
    wrong: 'This line begins with too many spaces, list marks or quote marks.',
    right: `At most ${most} characters of them: lists and quotes stand at most a few levels deep.`,
  }),
  /** `code`: U+… */
  'bank-character': ({ code }: { code: string }) => ({
    wrong: `Here is a character that can't be printed: ${code}.`,
    right: 'Delete it, or write what is meant in words.',
  }),

  'bank-no-front-matter': {
    wrong: 'The file does not begin with its front matter.',
    right: 'Begin it with a line ---, then id, title, summary, order and skills, then a line ---.',
  },
  'bank-no-front-matter.end': {
    wrong: 'The front matter has no end.',
    right: 'Put a line --- between it and the lesson.',
  },
  'bank-too-large.frontMatter': ({ characters, depth }: { characters: number; depth: number }) => ({
    wrong: 'The front matter is too long, or too deeply nested, to be read.',
    right: `At most ${characters} characters and ${depth} brackets inside one another.`,
  }),
  'bank-front-matter': ({ code }: { code: ErrorCode }) => {
    const [wrong, right] = YAML[code];
    return { wrong, right };
  },
  'bank-front-matter.alias': {
    wrong: 'The front matter has no aliases (*name).',
    right: WRITE_OUT,
  },
  'bank-front-matter.anchor': {
    wrong: 'The front matter has no anchors (&name).',
    right: WRITE_OUT,
  },
  'bank-front-matter.tag': {
    wrong: 'The front matter has no tags (!name).',
    right: WRITE_OUT,
  },
  'bank-front-matter.key': {
    wrong: 'A key of the front matter is one word.',
    right: WRITE_OUT,
  },
  'bank-unknown-key.front': ({ key, keys, ...slip }: Slip & { key: string; keys: readonly string[] }) => ({
    wrong: `There is no key ${shown(key)} here.`,
    right: asMeant(slip, `The keys here are ${speech.and(keys)}.`),
  }),
  'bank-value.front': ({ keys }: { keys: readonly string[] }) => ({
    wrong: 'The front matter is no list of keys.',
    right: `Its keys are ${speech.and(keys)}.`,
  }),
  'bank-missing-key.front': (of: OfKey) => ({
    wrong: `Here the key ${of.key} is missing.`,
    right: meaning(of),
  }),
  'bank-value.key': (of: OfKey) => ({
    wrong: `This is no usable value for ${of.key}.`,
    right: meaning(of),
  }),
  /** `item`: its number in the list. */
  'bank-value.item': ({ item, ...of }: OfKey & { item: number }) => ({
    wrong: `This is no usable value for ${of.key} (item ${item}).`,
    right: meaning(of),
  }),

  'bank-markdown': {
    wrong: 'A lesson has nothing of this kind.',
    right: 'It has paragraphs, lists, quotes, tables, headings, *emphasis*, `terminals` and links.',
  },
  'bank-markdown.unreadable': {
    wrong: "The lesson can't be read from here on.",
    right: 'Indent with spaces instead of tabs, and put a quote at the start of its line, outside lists.',
  },
  'bank-too-large.paragraph': ({ characters, signs }: { characters: number; signs: number }) => ({
    wrong: 'This paragraph is too long to be read, or has too many signs of emphasis.',
    right: `At most ${characters} characters and ${signs} of the signs * _ ~ \` [ in one: divide it.`,
  }),
  'bank-html': {
    wrong: 'A lesson has no HTML.',
    right: 'Write it in Markdown; a sign < before a letter is written \\<.',
  },
  'bank-markdown.image': {
    wrong: 'A lesson has no pictures.',
    right: 'Draw it with a circuit block: ```circuit id=….',
  },
  'bank-block-place': {
    wrong: 'A block stands by itself, not indented and not in a list or a quote.',
    right: 'Put it between two paragraphs, its fence at the beginning of the line.',
  },
  'bank-heading.inside': {
    wrong: 'A heading stands by itself, not in a list or a quote.',
    right: 'Put it at the beginning of a line.',
  },
  'bank-markdown.table': {
    wrong: 'A table stands by itself, not in a list or a quote.',
    right: 'Put it between two paragraphs.',
  },
  'bank-markdown.rule': {
    wrong: 'A lesson has no rules across it.',
    right: 'Begin a new part with a heading: ## Title.',
  },
  'bank-markdown.definition': {
    wrong: 'Addresses of links stand where the link is.',
    right: 'Write [text](https://example.org/) or [text](other-topic.md).',
  },
  'bank-markdown.struckOut': {
    wrong: 'A lesson has no struck out text.',
    right: 'Leave it out.',
  },
  'bank-markdown.lineEnd': {
    wrong: 'A lesson has no forced line ends.',
    right: 'Begin a new paragraph with an empty line.',
  },
  'bank-markdown.checkbox': {
    wrong: 'A lesson has no boxes to tick.',
    right: 'Begin the item with its text.',
  },
  'bank-link.address': {
    wrong: 'This link leads neither to a topic nor to an https address.',
    right: 'Write [text](other-topic.md) or [text](https://example.org/).',
  },
  /** `example`: a topic that there is. */
  'bank-link': ({ topic, example, ...slip }: Slip & { topic: string; example: string }) => ({
    wrong: `There is no topic ${shown(topic)}.`,
    right: asMeant(slip, `A link to a topic names its file: [text](${example}.md).`),
  }),
  'bank-heading': {
    wrong: 'Nothing stands under this heading.',
    right: 'Write something, or leave it out.',
  },
  /** `headings`: those that there are. */
  'bank-unknown-heading': ({
    heading,
    headings,
    ...slip
  }: Slip & { heading: string; headings: readonly string[] }) => ({
    wrong: `The lesson has no section ${shown(heading)} with text in it.`,
    right: asMeant(
      slip,
      headings.length === 0
        ? 'Write a section with a heading, or leave the key out.'
        : `It has these: ${headings.map(shown).join(', ')}.`,
    ),
  }),
  'bank-heading.length': ({ most }: { most: number }) => ({
    wrong: `A heading has 1 to ${most} characters.`,
    right: 'Write it like ## The common is always used.',
  }),
  'bank-heading.depth': {
    wrong: 'Headings of a lesson begin with ## or ###.',
    right: 'The title of the topic stands in the front matter.',
  },
  'bank-heading.first': {
    wrong: 'Here is no section that this could be a part of.',
    right: 'Begin the first heading with ##.',
  },

  'bank-recipe-size': ({ smallest, largest }: { smallest: number; largest: number }) => ({
    wrong: 'The smallest size is larger than the largest.',
    right: `Write the smaller first: [${largest}, ${smallest}].`,
  }),
  'bank-recipe-size.family': ({ family, least, most }: { family: string; least: number; most: number }) => ({
    wrong: `The family ${family} has the sizes ${least} to ${most}.`,
    right: 'Ask for sizes among them, or give this family a recipe of its own.',
  }),
  'bank-unknown-family': ({
    family,
    families,
    ...slip
  }: Slip & { family: string; families: readonly string[] }) => ({
    wrong: `There is no family ${shown(family)}.`,
    right: asMeant(slip, `There are: ${families.join(', ')}.`),
  }),
  'bank-recipe-empty': (recipe: { family: string; kind: string; smallest: number; largest: number }) => ({
    wrong: `The family ${recipe.family} gives no ${recipe.kind} question in the sizes ${recipe.smallest} to ${recipe.largest}.`,
    right: 'Ask it in another kind or size, or leave it out here.',
  }),
  'bank-unknown-skill': ({ skill, ...slip }: Slip & { skill: string }) => ({
    wrong: `There is no skill ${shown(skill)}.`,
    right: asMeant(slip, "Name a skill of this topic's front matter."),
  }),
  'bank-file-name': ({ topic, file }: { topic: string; file: string }) => ({
    wrong: `The topic ${topic} is in a file ${shown(file)}.`,
    right: `A topic's file has its name: ${topic}.md.`,
  }),
  'bank-repeated-name': ({ topic, file }: { topic: string; file: string }) => ({
    wrong: `The topic ${topic} is in ${file} already.`,
    right: 'Give one of them another name.',
  }),
  'bank-repeated-order': ({ topic, order }: { topic: string; order: number }) => ({
    wrong: `The topic ${topic} has the place ${order} already.`,
    right: 'Give one of them another place.',
  }),
};
