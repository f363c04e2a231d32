import { say } from '../../statement.ts';
import { type FormSaid, forms } from '../forms.ts';
import { shown } from '../problems/parts.ts';

interface NoJson {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly found: string | undefined;
}

export const mark = {
  help: {
    summary: 'mark an answer',
    description:
      'Marks an answer to a question: part by part, the wrong idea behind it, and why the right answer is right.',
    file: 'a question as `ask` prints it, with or without an answer; - for standard input',
    options: {
      answer: 'the answer as one would type it in the drill',
      json: 'print the mark as JSON',
    },
    note: "Exit code 0 whether the answer is right or wrong; 2 when the question or the answer can't be read.",
  },
  noJson: ({ file, line, column, found }: NoJson) =>
    found === undefined
      ? `${file} is no JSON: it ends too early.`
      : `${file} is no JSON: in line ${line}, column ${column}, ${shown(found)} can't stand.`,
  noQuestion: ({ file, form }: { file: string; form: FormSaid }) =>
    `${file} is no question. ${say(forms, form)}`,
  wanted: 'Give what `polewise ask` prints.',
  noAnswer: {
    wrong: 'There is no answer to mark.',
    right: 'Give one with --answer, or in the file under "answer".',
  },
  anotherKind: {
    wrong: ({ given, wanted }: { given: string; wanted: string }) =>
      `The answer is for a question of the kind ${given}, this is ${wanted}.`,
    right: 'Give the answer to this question.',
  },
};
