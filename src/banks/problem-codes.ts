/**
 * The codes of everything that can be wrong with a question bank, beside those of the circuits, acts, faults and
 * questions in it. Once given, a code keeps its meaning; one that is given up is not used again. docs/errors.md has the
 * same rows.
 */
export const BANK_PROBLEMS = {
  'bank-too-large':
    'A limit is met that keeps a hostile file from costing anything; the message has its figure.',
  'bank-too-many-problems': 'A file has more mistakes than are listed.',
  'bank-character': "A character that can't be printed, or that hides or turns round what stands beside it.",
  'bank-no-front-matter': 'A file without front matter between two lines of three hyphens.',
  'bank-front-matter':
    "Front matter that can't be read, or with more than keys, lists and plain values in it.",
  'bank-unknown-key': "A key that the front matter or a block hasn't got.",
  'bank-repeated-key': 'A key that is there twice.',
  'bank-missing-key': 'A key that is needed and left out.',
  'bank-value': 'A value that a key cannot have.',
  'bank-file-name': "The file isn't named after its topic.",
  'bank-repeated-name': 'Two topics, circuits of a topic, or questions of a topic with the same name.',
  'bank-repeated-order': 'Two topics with the same place in the order.',
  'bank-unknown-skill': "A question for a skill that its topic hasn't got.",
  'bank-unknown-family': "A recipe with a family of circuits that there isn't.",
  'bank-recipe-size': "A recipe with a size that a family hasn't got.",
  'bank-recipe-empty': 'A recipe with a family that gives no question of a kind.',
  'bank-markdown': 'Something of Markdown that a lesson does not have.',
  'bank-html': 'Raw HTML in a lesson.',
  'bank-link': 'A link to somewhere a lesson does not lead to.',
  'bank-heading': 'A heading without anything under it, or in the wrong depth.',
  'bank-unknown-block': 'A fenced block of a kind that there is not.',
  'bank-unclosed-block': 'A fenced block without its end.',
  'bank-block-place': 'A fenced block in a list or a quote.',
  'bank-setting': 'Something on the first line of a block that is no setting of it.',
  'bank-missing-setting': 'A setting that a block needs and has not got.',
  'bank-field':
    'A line in a block that belongs to no key, or a value that is not written as its key needs it.',
  'bank-rules': 'Drawing rules that are turned off without saying which and why, or that nothing breaks.',
  'bank-unknown-circuit': 'A circuit that the topic has not got above the block that names it.',
  'bank-unknown-item': 'A lamp, input, relay, terminal or choice that is not there or not asked for.',
  'bank-unknown-state': "A state that something can't have.",
  'bank-repeated-item': 'The same thing asked or answered twice.',
  'bank-missing-answer': 'Something is asked and not answered.',
  'bank-not-confirmed': "The solver doesn't confirm what the author says.",
} as const;

export type BankCode = keyof typeof BANK_PROBLEMS;
