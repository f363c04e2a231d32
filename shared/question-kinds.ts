/** The kinds of question by name, for whoever only names them. */
export const QUESTION_KINDS = [
  'lamp-states',
  'input-states',
  'relay-states',
  'wiring',
  'meter',
  'sequence',
  'still-live',
] as const;
