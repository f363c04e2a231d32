/** Each mistake that a text can hold: where it is found, and what is said of it. */
import { describe, expect, it } from 'vitest';
import { readCircuit } from '../../../src/circuit/index.ts';
import { CIRCUIT_CODES } from '../../../src/circuit/problem-codes.ts';
import { oneLine, problemsOf } from '../reading.ts';

/** A sound circuit to which each case adds lines; what is added begins on line 9. */
const BASE = `# Ice works: brine pump
supply A 24 V AC
-F1  fuse 2 A
-S1  push-button make "Start"
-S3  selector Off/Hand/Auto make Hand
-K3  relay 2 poles
A:L  -F1:1-2  -S1:13-14  -K3:A1-A2  A:N
`;

/** Code, lines added to BASE, where, a part of the message, a part of the hint. */
const CASES: readonly (readonly [string, string, string, string, string])[] = [
  ['unknown-line', 'suply B 24 V AC', '9:1', '"suply"', 'Did you mean supply?'],
  ['unknown-line', '"Start"', '9:1', "can't begin with a text", 'A line is a supply'],
  ['unknown-word', '-K4 relay fast', '9:11', '"fast"', '[2 poles] [24 V AC|DC] ["text"]'],
  ['unknown-word', '-H1 lamp grene', '9:10', '"grene"', 'Did you mean green?'],
  ['unexpected-option', '-K4 relay 5 s', '9:11', '"5 s" doesn\'t belong to a relay', '[2 poles]'],
  ['unexpected-option', '-K4 relay green', '9:11', '"green" doesn\'t belong to a relay', '[24 V AC|DC]'],
  ['unexpected-option', 'A:L -F1:1 "Start"', '9:11', 'A path has no text', '-H1 lamp "Fan healthy"'],
  ['unexpected-option', 'sheet 2 "Inputs" 3', '9:18', 'a number and a title', 'sheet 2 "Controller inputs"'],
  ['repeated-option', '-K4 relay 2 poles 3 poles', '9:19', 'said twice of a relay', '2 poles'],
  ['repeated-option', 'sheet 2 "Inputs"\nsheet 2 "Outputs"', '10:9', 'has a title already', 'sheet 2'],
  ['missing-option', '-K4 on-delay', '9:13', 'missing for an on-delay: its time', 'end of the line'],
  ['missing-option', '-S4 selector make', '9:18', 'missing for a selector: its positions', 'end of the line'],
  [
    'missing-option',
    'supply B',
    '9:9',
    'missing for a supply: its voltage and kind of current',
    'end of the line',
  ],
  ['missing-current', '-K4 relay 24 V', '9:15', '24 V of which kind of current', '24 V AC or 24 V DC'],
  ['missing-current', 'supply B 24 V dc', '9:15', '24 V of which', 'Did you mean DC?'],
  ['bad-number', 'supply B 3,3 V DC', '9:10', '"3,3" is no number', 'at most one point'],
  ['bad-number', '-K4 relay -2 poles', '9:11', '"-2" is no number', 'without a sign'],
  ['bad-number', 'sheet', '9:6', 'needs its number', 'sheet 2'],
  ['missing-unit', '-K4 relay 2', '9:11', 'The number 2 has no unit', '2 poles'],
  ['unknown-unit', '-K4 relay 2 pols', '9:11', '"pols" is no unit', 'Did you mean poles?'],
  ['unknown-unit', '-K4 relay 24Volt DC', '9:11', '"Volt" is no unit', '[24 V AC|DC]'],
  ['out-of-range', '-K4 relay 9 poles', '9:11', 'number of poles is at most 4', 'at most 4'],
  ['out-of-range', '-K4 relay 1.5 poles', '9:11', 'a whole number', 'without a decimal point'],
  ['out-of-range', '-K4 on-delay 0 s', '9:14', 'more than 0', 'more than 0'],
  ['out-of-range', '-S4 selector Off make', '9:14', 'number of positions is at least 2', 'at least 2'],
  ['out-of-range', '-M1 motor 400 V 4 terminals', '9:17', 'number of terminals is 3 or 6', '3 or 6'],
  ['out-of-range', 'sheet 100', '9:7', 'number of the sheet is at most 99', 'at most 99'],
  ['out-of-range', '-K4 contactor 99', '9:15', 'number of contacts is at most 12', 'at most 12'],
  ['text-too-long', `-K4 relay "${'x'.repeat(81)}"`, '9:11', '80 characters', 'Shorten'],
  ['control-character', '-K4 relay "a\u001bb"', '9:11', '\\u001b', 'Take it out'],
  ['unclosed-quote', '-K4 relay "Pump', '9:11', 'no closing quotation mark', 'Close it'],
  ['bad-escape', '-K4 relay "Pump\\n"', '9:16', 'A backslash', '\\\\'],
  ['comment-in-line', '-K4 relay # spare', '9:11', 'line of its own', 'begins with #'],
  ['bad-supply-name', 'supply b 24 V AC', '9:8', '"b" can\'t be the name', 'one capital letter'],
  ['bad-supply-name', 'supply', '9:7', 'needs a name', 'supply A 24 V AC'],
  ['bad-designation', 'K4 relay', '9:1', '"K4" is no reference designation', 'Did you mean -K4?'],
  ['bad-designation', '-k4 relay', '9:1', '"-k4"', 'Did you mean -K4?'],
  [
    'bad-designation',
    '\u2212K4:A1 -K3:11',
    '9:1',
    'neither a reference designation nor a supply',
    'Did you mean -K4?',
  ],
  ['unknown-kind', '-K4 realy', '9:5', '"realy" is no kind of device', 'Did you mean relay?'],
  ['unknown-kind', '-K4', '9:4', 'What kind of device is -K4', 'relay, contactor'],
  ['contact-terminals', '-S4 push-button make 13', '9:22', '"13" are not the terminals', '13-14'],
  ['contact-terminals', '-S4 push-button changeover 11-12', '9:28', 'a changeover contact', '11-12-14'],
  [
    'repeated-terminal',
    '-S4 push-button make 13-14 break 13-22',
    '9:17',
    'the terminal 13 twice',
    'terminals of its own',
  ],
  ['bad-position', '-S4 selector Off/Hälfte make', '9:14', 'letters and digits', 'Off/Hand/Auto'],
  ['unknown-position', '-S4 selector Off/Auto make Aut', '9:23', 'no position "Aut"', 'Did you mean Auto?'],
  ['repeated-position', '-S4 selector Off/Off make', '9:14', 'the same name', 'Name them apart'],
  ['repeated-position', '-S4 selector Off/Auto make Auto+Auto', '9:23', 'a position twice', 'once'],
  ['reserved-position', '-S4 selector Off/make make', '9:14', "can't be called make", 'Make'],
  ['too-many-points', '-A1 outputs 1 "C" "One" "Two"', '9:15', '1 points and 2 texts', 'at most 1'],
  ['duplicate-supply', 'supply A 24 V DC', '9:1', 'two supplies A', 'letter of its own'],
  ['duplicate-designation', '-K3 lamp', '9:1', '-K3 is used twice', 'designation of its own'],
  ['path-length', 'A:L', '9:1', 'at least two stops', 'A:L  -F1:1-2'],
  ['path-length', Array(61).fill('-K3:11').join(' '), '9:421', '61 stops', 'next line'],
  ['bad-stop', 'A:L -K3:11-12-14', '9:5', '"11-12-14" are no terminals', '-K3:A1-A2'],
  ['bad-stop', 'A:L to -K3:11', '9:5', '"to" is no stop', '-K3:11-12'],
  ['missing-terminal', 'A:L -K3', '9:5', "doesn't say at which terminal", '-K3:13'],
  ['missing-terminal', '-K3 -F1:1-2', '9:1', "doesn't say at which terminal", '-K3:13'],
  ['missing-terminal', 'A:L -K3:', '9:5', "doesn't say at which terminal", '-K3:13'],
  ['unknown-supply', 'B:L -K3:11', '9:1', 'no supply B', 'Declared: A.'],
  ['unknown-designation', 'A:L -K33:11', '9:5', 'no device -K33', 'Did you mean -K3?'],
  ['unknown-terminal', 'A:L -K3:31-32', '9:5', '-K3 has no terminal 31', 'A1, A2, 11, 12, 14'],
  ['unknown-terminal', 'A:L+ -K3:11', '9:1', 'A has no terminal L+', 'Did you mean L?'],
  ['supply-hop', 'A:L-N -K3:11', '9:1', "can't lead through the supply A", 'A:L or A:N'],
  ['same-terminal-hop', 'A:L -K3:11-11', '9:5', 'enter and leave -K3 at the same terminal 11', '-K3:11'],
  ['no-way-through', 'A:L -K3:11-24', '9:5', 'nothing in -K3 between 11 and 24', '12 or 14'],
  ['joins-itself', 'A:L -K3:12-11 -K3:11', '9:15', 'joins -K3:11 to itself', 'next stop'],
];

describe('a mistake in a circuit', () => {
  it.each(CASES)('%s: %s', (code, lines, place, message, hint) => {
    const problems = problemsOf(readCircuit(`${BASE}\n${lines}\n`));
    const found = problems.find((problem) => problem.code === code);
    expect(problems.map(oneLine)).toContain(`${place} ${code}`);
    expect(found?.message).toContain(message);
    expect(
      problems
        .filter((problem) => problem.code === code)
        .map((problem) => problem.hint)
        .join(),
    ).toContain(hint);
  });

  it('is the only one reported where there is only one', () => {
    const several = CASES.filter(([, lines]) => problemsOf(readCircuit(`${BASE}\n${lines}\n`)).length > 1);
    expect(several).toEqual([]);
  });

  it.each([
    ['missing-rating', 'supply A 400 V 3AC\n-K3 relay', '2:1'],
    ['missing-supply', '-X1 terminals 4\n-X1:1 -X1:2', '1:1'],
    ['missing-supply', '', '1:1'],
    ['text-too-long', `# ${'x'.repeat(121)}\nsupply A 24 V AC`, '1:1'],
    ['too-large', 'x'.repeat(4001), '1:1'],
  ])('%s', (code, text, place) => {
    expect(problemsOf(readCircuit(text)).map(oneLine)).toContain(`${place} ${code}`);
  });

  it('has a case here for every code of the notation', () => {
    const elsewhere = ['missing-rating', 'missing-supply', 'too-large', 'too-many-problems'];
    expect([...new Set([...CASES.map(([code]) => code), ...elsewhere])].toSorted()).toEqual(
      CIRCUIT_CODES.notation.toSorted(),
    );
  });
});

describe('many mistakes in a circuit', () => {
  it('are all reported in one go, in the order of the text', () => {
    const text = [
      'supply A 24 V AC',
      'supply B 3,3 V DC',
      '-K1 realy',
      '-K2 relay 9 poles fast "open',
      'A:L -K1:11-12 -K2:A1-A2 -K9:1 A:X',
      'A:L',
      'what is this',
    ].join('\n');
    expect(problemsOf(readCircuit(text)).map(oneLine)).toEqual([
      '2:10 bad-number',
      '3:5 unknown-kind',
      '4:19 unknown-word',
      '4:24 unclosed-quote',
      '5:25 unknown-designation',
      '5:31 unknown-terminal',
      '6:1 path-length',
      '7:1 unknown-line',
    ]);
  });

  it('do not follow from one another: a device that could not be read is not missed on the paths', () => {
    const text = 'supply A 24 V AC\n-K1 relay 9 poles\nA:L -K1:11-12 -K1:A1-A2 A:N';
    expect(problemsOf(readCircuit(text)).map(oneLine)).toEqual(['2:11 out-of-range']);
  });

  it('are counted out at the limit', () => {
    const problems = problemsOf(readCircuit(`supply A 24 V AC\n${'what\n'.repeat(2000)}`));
    expect(problems).toHaveLength(1001);
    expect(problems.at(-1)).toMatchObject({ code: 'too-many-problems', line: 1001 });
  });

  it('show words of the input cut short and harmless to a terminal', () => {
    const [problem] = problemsOf(readCircuit(`supply A 24 V AC\n\u001b[31m${'x'.repeat(500)}\n`));
    expect(problem?.message).toContain('\\u001b[31mxxx');
    expect(problem?.message.length).toBeLessThan(100);
    // biome reads a control character in a pattern as a slip, so it is looked for by its code.
    expect([...(problem?.message ?? '')].filter((char) => char.charCodeAt(0) < 32)).toEqual([]);
  });
});
