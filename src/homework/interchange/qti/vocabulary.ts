/** The elements of QTI that items are put together from, in the names of 2.2. */
import { type XmlElement, xml } from './xml.ts';

export const paragraph = (...children: XmlElement['children']): XmlElement => xml('p', {}, children);

export const floatValue = (value: number): XmlElement =>
  xml('baseValue', { baseType: 'float' }, [String(value)]);

export const identifierValue = (value: string): XmlElement =>
  xml('baseValue', { baseType: 'identifier' }, [value]);

export const variable = (identifier: string): XmlElement => xml('variable', { identifier });

export const setScore = (value: XmlElement): XmlElement =>
  xml('setOutcomeValue', { identifier: 'SCORE' }, [value]);

export const scoreDeclaration = (most: number): XmlElement =>
  xml(
    'outcomeDeclaration',
    { identifier: 'SCORE', cardinality: 'single', baseType: 'float', normalMinimum: 0, normalMaximum: most },
    [xml('defaultValue', {}, [xml('value', {}, ['0'])])],
  );

export const correctResponse = (values: readonly string[]): XmlElement =>
  xml(
    'correctResponse',
    {},
    values.map((value) => xml('value', {}, [value])),
  );

/** Eight decimals: the sum over a question is right to far less than a hundredth of a mark. */
export const points = (value: number): string => String(Number(value.toFixed(8)));

export const mapping = (entries: readonly (readonly [key: string, value: number])[]): XmlElement =>
  xml(
    'mapping',
    { defaultValue: 0 },
    entries.map(([mapKey, value]) => xml('mapEntry', { mapKey, mappedValue: points(value) })),
  );

/**
 * The sum of what the responses are worth, and never below 0. One that wasn't given has no value at all and would make the
 * whole sum none, so each is added by itself.
 */
export const scoreOfMapped = (responses: readonly string[]): readonly XmlElement[] => [
  ...responses.map((identifier) =>
    xml('responseCondition', {}, [
      xml('responseIf', {}, [
        xml('not', {}, [xml('isNull', {}, [variable(identifier)])]),
        setScore(xml('sum', {}, [variable('SCORE'), xml('mapResponse', { identifier })])),
      ]),
    ]),
  ),
  setScore(xml('max', {}, [floatValue(0), variable('SCORE')])),
];
