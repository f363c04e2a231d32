/** What a question becomes in QTI: declarations of responses, interactions, and the rule that turns them into marks. */
import type { Answer, Asked, AskedItem, Question } from '../../../../shared/question.ts';
import { markAnswer, rightAnswer } from '../../../questions/index.ts';
import type { Words } from '../../../words/index.ts';
import {
  correctResponse,
  floatValue,
  identifierValue,
  mapping,
  paragraph,
  scoreOfMapped,
  setScore,
  variable,
} from './vocabulary.ts';
import { type XmlElement, xml } from './xml.ts';

export interface QtiParts {
  readonly responses: readonly XmlElement[];
  readonly interactions: readonly XmlElement[];
  readonly processing: readonly XmlElement[];
}

interface Group {
  readonly choices: readonly string[];
  readonly values: readonly string[];
  readonly items: readonly AskedItem[];
}

/** Things that can stand in the same ways go into one interaction. */
function groupsOf({ items }: Asked): readonly Group[] {
  const groups = new Map<string, Group & { items: AskedItem[] }>();
  for (const item of items) {
    const key = item.choices.join('|');
    const group = groups.get(key) ?? { choices: item.choices, values: item.values, items: [] };
    group.items.push(item);
    groups.set(key, group);
  }
  return [...groups.values()];
}

/**
 * Matching each thing asked with how it stands. Right minus wrong, as everywhere here: what is right earns its part, what
 * is wrong costs 1/(choices - 1) of one, what is left out costs nothing.
 */
function matching(asked: Asked, states: Readonly<Record<string, string>>, marks: number): QtiParts {
  const part = marks / asked.items.length;
  const groups = groupsOf(asked);
  const names = groups.map((_, index) => (groups.length === 1 ? 'RESPONSE' : `RESPONSE_${index + 1}`));
  const pair = (item: number, choice: number): string => `ITEM_${item + 1} STATE_${choice + 1}`;
  const choiceOf = (identifier: string, matchMax: number, text: string): XmlElement =>
    xml('simpleAssociableChoice', { identifier, matchMax }, [text]);
  return {
    responses: groups.map(({ values, items }, index) =>
      xml(
        'responseDeclaration',
        { identifier: names[index]!, cardinality: 'multiple', baseType: 'directedPair' },
        [
          correctResponse(items.map(({ item }, at) => pair(at, values.indexOf(states[item]!)))),
          mapping(
            items.flatMap(({ item }, at) =>
              values.map(
                (state, choice) =>
                  [pair(at, choice), state === states[item] ? part : -part / (values.length - 1)] as const,
              ),
            ),
          ),
        ],
      ),
    ),
    interactions: groups.map(({ choices, items }, index) =>
      xml(
        'matchInteraction',
        { responseIdentifier: names[index]!, shuffle: false, maxAssociations: items.length },
        [
          xml('prompt', {}, [asked.task]),
          xml(
            'simpleMatchSet',
            {},
            items.map(({ label }, at) => choiceOf(`ITEM_${at + 1}`, 1, label)),
          ),
          xml(
            'simpleMatchSet',
            {},
            choices.map((state, choice) => choiceOf(`STATE_${choice + 1}`, items.length, state)),
          ),
        ],
      ),
    ),
    processing: scoreOfMapped(names),
  };
}

function choosing(asked: Asked, right: number | undefined, marks: number): QtiParts {
  const { choices } = asked.items[0]!;
  return {
    responses: [
      xml('responseDeclaration', { identifier: 'RESPONSE', cardinality: 'single', baseType: 'identifier' }, [
        correctResponse(right === undefined ? [] : [`CHOICE_${right + 1}`]),
        mapping(choices.map((_, index) => [`CHOICE_${index + 1}`, index === right ? marks : 0] as const)),
      ]),
    ],
    interactions: [
      xml('choiceInteraction', { responseIdentifier: 'RESPONSE', shuffle: false, maxChoices: 1 }, [
        xml('prompt', {}, [asked.task]),
        ...choices.map((text, index) => xml('simpleChoice', { identifier: `CHOICE_${index + 1}` }, [text])),
      ]),
    ],
    processing: scoreOfMapped(['RESPONSE']),
  };
}

const both = (...conditions: XmlElement[]): XmlElement => xml('and', {}, conditions);
const either = (...conditions: XmlElement[]): XmlElement =>
  conditions.length === 1 ? conditions[0]! : xml('or', {}, conditions);
const chosen = (what: string): XmlElement =>
  xml('match', {}, [variable('RESPONSE_READS'), identifierValue(what)]);
const near = (volts: number, tolerance: number): XmlElement =>
  xml('equal', { toleranceMode: 'absolute', tolerance: `${tolerance} ${tolerance}` }, [
    variable('RESPONSE_VOLTS'),
    floatValue(volts),
  ]);

/**
 * What a meter reads: whether it reads anything, and the volts. Two responses for every meter question, so that the form
 * doesn't tell; a reading of nothing and of 0 V look the same on a meter and count alike.
 */
function reading({ interchange: say }: Words, question: Question, asked: Asked, marks: number): QtiParts {
  const answer = rightAnswer(question);
  const volts = 'volts' in answer ? (answer.volts ?? null) : null;
  const tolerance = 'tolerance' in question ? question.tolerance : 0;
  const right = (value: number | null): boolean =>
    markAnswer(question, { ...answer, volts: value } as Answer).mark.correct;
  const readings = volts === null ? [0] : right(-volts) && volts !== 0 ? [volts, -volts] : [volts];
  const whenVolts = both(chosen('VOLTS'), either(...readings.map((value) => near(value, tolerance))));
  return {
    responses: [
      xml(
        'responseDeclaration',
        { identifier: 'RESPONSE_READS', cardinality: 'single', baseType: 'identifier' },
        [correctResponse([volts === null ? 'NOTHING' : 'VOLTS'])],
      ),
      xml(
        'responseDeclaration',
        { identifier: 'RESPONSE_VOLTS', cardinality: 'single', baseType: 'float' },
        volts === null ? [] : [correctResponse([String(volts)])],
      ),
    ],
    interactions: [
      xml('choiceInteraction', { responseIdentifier: 'RESPONSE_READS', shuffle: false, maxChoices: 1 }, [
        xml('prompt', {}, [asked.task]),
        xml('simpleChoice', { identifier: 'VOLTS' }, [say.volts]),
        xml('simpleChoice', { identifier: 'NOTHING' }, [say.nothing]),
      ]),
      paragraph(
        say.voltsEntry,
        xml('textEntryInteraction', { responseIdentifier: 'RESPONSE_VOLTS', expectedLength: 10 }),
      ),
    ],
    processing: [
      xml('responseCondition', {}, [
        xml('responseIf', {}, [
          either(whenVolts, ...(right(null) ? [chosen('NOTHING')] : [])),
          setScore(floatValue(marks)),
        ]),
        xml('responseElse', {}, [setScore(floatValue(0))]),
      ]),
    ],
  };
}

/** The parts of an item, by how it is answered. */
export function qtiParts(words: Words, question: Question, asked: Asked, marks: number): QtiParts {
  const right = rightAnswer(question);
  switch (asked.form) {
    case 'states':
      return matching(asked, 'states' in right ? right.states : {}, marks);
    case 'choice':
      return choosing(asked, 'choice' in right ? right.choice : undefined, marks);
    case 'reading':
      return reading(words, question, asked, marks);
  }
}
