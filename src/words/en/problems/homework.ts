/** What can be wrong with a homework set, its papers and marks, and with files that come from other systems. */
import type { StatementOf } from '../../statement.ts';
import { paperCodeProblems } from './paper-code.ts';

/** `place`: its number in the set. */
interface Place {
  readonly place: number;
}

export const homeworkProblems = {
  'homework-times': {
    wrong: 'The set closes before it opens.',
    right: 'Give a closing time that is later than the opening time.',
  },
  'homework-unknown-skill': ({ skill }: { skill: string }) => ({
    wrong: `There is no skill ${skill}.`,
    right: 'Choose a skill of the question banks.',
  }),
  'homework-unknown-skill.place': ({ place, skill }: Place & { skill: string }) => ({
    wrong: `Place ${place} asks for the skill ${skill}, which there isn't.`,
    right: 'Choose a skill of the question banks.',
  }),
  'homework-unknown-family': ({ place, family }: Place & { family: string }) => ({
    wrong: `Place ${place} asks for the family ${family}, which there isn't.`,
    right: 'Choose families that the generator has.',
  }),
  'homework-no-recipe': (wish: { skill: string; kind: string; kinds: readonly string[] }) => ({
    wrong: `No recipe of ${wish.skill} makes ${wish.kind} questions.`,
    right: `It can be asked as ${wish.kinds.join(', ')}.`,
  }),
  'homework-no-question': (wish: { kind: string; families: readonly string[]; size: number }) => ({
    wrong: `Hardly any ${wish.kind} question came of ${wish.families.join(', ')} in size ${wish.size}.`,
    right: 'Choose another level or kind.',
  }),
  'homework-no-question.place': (wish: Place & { kind: string; families: readonly string[] }) => ({
    wrong: `No ${wish.kind} question of the wanted difficulty came of ${wish.families.join(', ')} in place ${wish.place}.`,
    right: 'Choose another size, kind or family, or have the difficulty measured again.',
  }),
  'homework-too-few-circuits': ({ place }: Place) => ({
    wrong: `Place ${place} has no circuits left that nobody has.`,
    right: 'Choose a larger size, or more families.',
  }),
  'homework-no-such-item': ({ item, items }: { item: number; items: number }) => ({
    wrong: `The paper has no item ${item}.`,
    right: `It has items 1 to ${items}.`,
  }),
  'homework-too-many-marks': ({ item, given, marks }: { item: number; given: number; marks: number }) => ({
    wrong: `Item ${item} can't earn ${given} marks.`,
    right: `It has ${marks}.`,
  }),
  ...paperCodeProblems,
};
export type HomeworkProblemSaid = StatementOf<typeof homeworkProblems>;

const ONE_LINE = 'One line, 1 to 80 letters.';
const NO_FORMULA = 'A name begins with a letter or digit: spreadsheets run what begins with = + - or @.';

export const interchangeProblems = {
  'csv-quote': {
    wrong: 'A quotation mark stands in the middle of a value.',
    right: 'Put the whole value in quotation marks and double those inside.',
  },
  'csv-quote.open': {
    wrong: 'A quotation mark is not closed.',
    right: 'Close the value with a quotation mark.',
  },
  'csv-empty': {
    wrong: 'The file is empty.',
    right: 'Its first line has to name the columns.',
  },
  'csv-width': ({ fields, columns }: { fields: number; columns: number }) => ({
    wrong: `This line has ${fields} fields, the first one ${columns}.`,
    right: 'Put values with commas in quotation marks, and leave no comma out.',
  }),
  'roster-missing-file': ({ file }: { file: string }) => ({
    wrong: `${file} is not there.`,
    right: 'Hand over users.csv, classes.csv and enrollments.csv together.',
  }),
  'roster-missing-column': ({ column, columns }: { column: string; columns: readonly string[] }) => ({
    wrong: `The column ${column} is not there.`,
    right: `It has to have ${columns.join(', ')}.`,
  }),
  'roster-missing-value': ({ column }: { column: string }) => ({
    wrong: `${column} is empty.`,
    right: 'Give it a value.',
  }),
  'roster-bad-value': (cell: { column: string; value: string; values: readonly string[] }) => ({
    wrong: `${cell.column} can't be ${cell.value}.`,
    right: `It can be ${cell.values.join(', ')}.`,
  }),
  'roster-missing-column.name': ({ columns }: { columns: readonly string[] }) => ({
    wrong: 'The column name is not there.',
    right: `Columns are ${columns.join(', ')}; only name has to be there.`,
  }),
  'roster-bad-value.name': {
    wrong: 'There is no name that can be kept.',
    right: ONE_LINE,
  },
  'roster-bad-value.formula': ({ name }: { name: string }) => ({
    wrong: `${name} can't be a name.`,
    right: NO_FORMULA,
  }),
  /** `id`: whose name it is. */
  'roster-bad-value.nameOf': ({ id }: { id: string }) => ({
    wrong: `The name of ${id} can't be kept.`,
    right: ONE_LINE,
  }),
  'roster-bad-value.formulaOf': ({ id }: { id: string }) => ({
    wrong: `The name of ${id} can't be kept.`,
    right: NO_FORMULA,
  }),
  'roster-bad-value.manner': ({ given }: { given: string }) => ({
    wrong: `manner can't be ${given}.`,
    right: 'It can be learner or tutor.',
  }),
  'roster-bad-value.signIn': ({ given }: { given: string }) => ({
    wrong: `sign-in can't be ${given}.`,
    right: '2 to 40 small letters, digits, dots, _ and -.',
  }),
  'roster-bad-value.noClass': {
    wrong: 'There is no class in it.',
    right: 'Hand over an export with one class at least.',
  },
  'roster-bad-value.class': ({
    classes,
  }: {
    classes: readonly { readonly id: string; readonly title: string }[];
  }) => ({
    wrong: 'It is not clear which class is meant.',
    right: `Name one: ${classes.map(({ id, title }) => `${id} (${title})`).join(', ')}.`,
  }),
  'roster-twice': ({ id }: { id: string }) => ({
    wrong: `The sourcedId ${id} is there twice.`,
    right: 'Give each line its own, or leave one out.',
  }),
  'roster-unknown-reference': ({ column, to }: { column: string; to: string }) => ({
    wrong: `${column} refers to ${to}, which isn't there.`,
    right: 'Hand over users, classes and enrollments of one and the same export.',
  }),
};
export type InterchangeProblemSaid = StatementOf<typeof interchangeProblems>;
