/**
 * The published structure of QTI 2.2 (IMS Question and Test Interoperability, assessment test, section and item information
 * model, version 2.2, 2015; from memory) for the elements that packages here use: which children in which order, which
 * attributes must be there, which may. QTI 3.0 has the same model with other names. The XML schemas themselves can't be had
 * as a package and aren't copied here.
 */

export interface Model {
  /** Children in order: a name, then `?` at most one, `*` any number, `+` at least one; `a|b*` any of these, mixed. */
  readonly children: readonly string[];
  readonly required: readonly string[];
  readonly optional: readonly string[];
  readonly text?: boolean;
}

const ROOT = ['schemaLocation', 'xsi:schemaLocation', 'xml:lang', 'lang'];
const EXPRESSION = 'sum|max|not|and|or|isNull|variable|mapResponse|baseValue|match|equal|testVariables';
const BLOCK = 'p|div|ul|choiceInteraction|matchInteraction';

const model = (
  children: readonly string[],
  required: readonly string[] = [],
  optional: readonly string[] = [],
  text = false,
): Model => ({ children, required, optional, text });

export const MODELS: Readonly<Record<string, Model>> = {
  assessmentItem: model(
    ['responseDeclaration*', 'outcomeDeclaration*', 'itemBody?', 'responseProcessing?'],
    ['identifier', 'title', 'adaptive', 'timeDependent'],
    [...ROOT, 'label', 'toolName', 'toolVersion'],
  ),
  responseDeclaration: model(
    ['defaultValue?', 'correctResponse?', 'mapping?'],
    ['identifier', 'cardinality'],
    ['baseType'],
  ),
  outcomeDeclaration: model(
    ['defaultValue?'],
    ['identifier', 'cardinality'],
    ['baseType', 'normalMinimum', 'normalMaximum'],
  ),
  correctResponse: model(['value+']),
  defaultValue: model(['value+']),
  value: model([], [], ['baseType', 'fieldIdentifier'], true),
  mapping: model(['mapEntry+'], ['defaultValue'], ['lowerBound', 'upperBound']),
  mapEntry: model([], ['mapKey', 'mappedValue'], ['caseSensitive']),
  itemBody: model([`${BLOCK}+`]),
  p: model(['img|em|textEntryInteraction*'], [], [], true),
  em: model([], [], [], true),
  img: model([], ['src', 'alt'], ['height', 'width', 'longdesc']),
  choiceInteraction: model(
    ['prompt?', 'simpleChoice+'],
    ['responseIdentifier', 'shuffle', 'maxChoices'],
    ['minChoices', 'orientation'],
  ),
  simpleChoice: model([], ['identifier'], ['fixed'], true),
  matchInteraction: model(
    ['prompt?', 'simpleMatchSet+'],
    ['responseIdentifier', 'shuffle'],
    ['maxAssociations', 'minAssociations'],
  ),
  simpleMatchSet: model(['simpleAssociableChoice*']),
  simpleAssociableChoice: model([], ['identifier', 'matchMax'], ['matchMin', 'fixed'], true),
  textEntryInteraction: model([], ['responseIdentifier'], ['base', 'expectedLength', 'patternMask']),
  prompt: model([], [], [], true),
  responseProcessing: model(['responseCondition|setOutcomeValue*'], [], ['template']),
  responseCondition: model(['responseIf', 'responseElseIf*', 'responseElse?']),
  responseIf: model([EXPRESSION, 'responseCondition|setOutcomeValue*']),
  responseElse: model(['responseCondition|setOutcomeValue*']),
  setOutcomeValue: model([EXPRESSION], ['identifier']),
  sum: model([`${EXPRESSION}+`]),
  max: model([`${EXPRESSION}+`]),
  and: model([`${EXPRESSION}+`]),
  or: model([`${EXPRESSION}+`]),
  not: model([EXPRESSION]),
  isNull: model([EXPRESSION]),
  match: model([EXPRESSION, EXPRESSION]),
  equal: model([EXPRESSION, EXPRESSION], ['toleranceMode'], ['tolerance', 'includeLowerBound']),
  variable: model([], ['identifier'], ['weightIdentifier']),
  mapResponse: model([], ['identifier']),
  baseValue: model([], ['baseType'], [], true),
  assessmentTest: model(
    ['outcomeDeclaration*', 'testPart+', 'outcomeProcessing?'],
    ['identifier', 'title'],
    [...ROOT, 'toolName', 'toolVersion'],
  ),
  testPart: model(['assessmentSection+'], ['identifier', 'navigationMode', 'submissionMode']),
  assessmentSection: model(['assessmentItemRef+'], ['identifier', 'title', 'visible']),
  assessmentItemRef: model([], ['identifier', 'href'], ['category', 'required', 'fixed']),
  outcomeProcessing: model(['setOutcomeValue+']),
  testVariables: model([], ['variableIdentifier'], ['baseType', 'sectionIdentifier']),
};

/** IMS Content Packaging 1.2 (from memory). */
export const MANIFEST_MODELS: Readonly<Record<string, Model>> = {
  manifest: model(['metadata', 'organizations', 'resources'], ['identifier'], ROOT),
  metadata: model(['schema', 'schemaversion']),
  schema: model([], [], [], true),
  schemaversion: model([], [], [], true),
  organizations: model([]),
  resources: model(['resource*']),
  resource: model(['metadata?', 'file*', 'dependency*'], ['identifier', 'type'], ['href']),
  file: model([], ['href']),
  dependency: model([], ['identifierref']),
};
