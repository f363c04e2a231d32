/**
 * The codes of everything that can be wrong with a circuit, its acts and its faults. Once given, a code keeps its meaning; a
 * code that is given up is not used again. docs/errors.md has the same rows. Drawing rules have their names as codes.
 */
export const PROBLEM_SOURCES = ['notation', 'JSON', 'acts and faults'] as const;

interface ProblemRow {
  /** What the input is where it is met first; a check that several inputs share is listed once. */
  readonly source: (typeof PROBLEM_SOURCES)[number];
  readonly meaning: string;
}

const notation = (meaning: string): ProblemRow => ({ source: 'notation', meaning });
const json = (meaning: string): ProblemRow => ({ source: 'JSON', meaning });
const scenario = (meaning: string): ProblemRow => ({ source: 'acts and faults', meaning });

export const CIRCUIT_PROBLEMS = {
  'unknown-line': notation(
    'A line begins with none of the words, designations and terminals that a line can begin with.',
  ),
  'unknown-word': notation("A word that the notation hasn't got."),
  'unexpected-option': notation(
    'A word, number or text that means something elsewhere, but not in this place.',
  ),
  'repeated-option': notation('The same thing is said twice of one device, supply or sheet.'),
  'missing-option': notation("A device or supply lacks something that it can't do without."),
  'missing-current': notation('A voltage without its kind of current.'),
  'missing-rating': notation(
    'A coil or load has no rating, and there is no AC or DC supply to take it from.',
  ),
  'bad-number': notation("Something that should be a number and isn't."),
  'missing-unit': notation('A number without its unit.'),
  'unknown-unit': notation("A number with a unit that isn't used there."),
  'out-of-range': notation(
    'A number, or how many there are of something, is too small, too large or not whole.',
  ),
  'text-too-long': notation('A text or title is too long.'),
  'control-character': notation("A text contains a character that can't be printed."),
  'unclosed-quote': notation('A text without its closing quotation mark.'),
  'bad-escape': notation(
    'A backslash in a text before something other than a quotation mark or a backslash.',
  ),
  'comment-in-line': notation("A comment that doesn't stand on a line of its own."),
  'bad-supply-name': notation("A supply that isn't named by one capital letter."),
  'bad-designation': notation("Something that should be a reference designation and isn't."),
  'unknown-kind': notation("A kind of device that there isn't."),
  'contact-terminals': notation(
    'A contact with the wrong number of terminals, or with something that is no terminal.',
  ),
  'repeated-terminal': notation('A device with the same terminal twice.'),
  'bad-position': notation(
    "A selector's position with other characters than letters and digits, or too many.",
  ),
  'unknown-position': notation("A position that the selector hasn't got, or a device without positions."),
  'repeated-position': notation('A position named twice.'),
  'reserved-position': notation('A position with the name of a form of contact.'),
  'too-many-points': notation("More texts than the controller's module has points."),
  'missing-supply': notation('A circuit without a supply.'),
  'duplicate-supply': notation('Two supplies with the same letter.'),
  'duplicate-designation': notation('Two devices with the same designation.'),
  'path-length': notation('A path with fewer than two stops, or with too many.'),
  'bad-stop': notation('A stop on a path that is no device with one or two terminals.'),
  'missing-terminal': notation('A stop on a path without its terminal.'),
  'unknown-supply': notation("A supply that the circuit hasn't got."),
  'unknown-designation': notation("A device that the circuit hasn't got."),
  'unknown-terminal': notation("A terminal that the device or supply hasn't got."),
  'supply-hop': notation('A path that leads through a supply.'),
  'same-terminal-hop': notation('A hop that enters and leaves at the same terminal.'),
  'no-way-through': notation('A hop between two terminals that nothing inside the device joins.'),
  'joins-itself': notation('A wire from a terminal to itself.'),
  'too-large': notation(
    'A limit is met that keeps hostile input from costing anything; the message has its figure.',
  ),
  'too-many-problems': notation('There are more mistakes than are listed.'),
  'bad-json': json('The text is no JSON.'),
  'json-shape': json("The JSON hasn't the shape of a circuit; the message begins with the place."),
  'duplicate-sheet': json('A sheet that is listed twice.'),
  'sheet-not-listed': json("A path on a sheet that isn't listed."),
  'unknown-act': scenario('A word that is no act.'),
  'bad-act': scenario('An act that lacks something, or has too much.'),
  'act-not-possible': scenario("An act that can't be done to this device."),
  'unknown-fault': scenario('A fault without the word that says what is wrong.'),
  'bad-fault': scenario("A fault that isn't written as its kind is."),
  'fault-not-possible': scenario("A fault that this circuit can't have in this place."),
} satisfies Readonly<Record<string, ProblemRow>>;

export type CircuitCode = keyof typeof CIRCUIT_PROBLEMS;
