/**
 * The codes of everything that can be wrong with an answer or with a question somebody wrote. Once given, a code keeps its
 * meaning; one that is given up is not used again. docs/errors.md has the same rows.
 */
export const QUESTION_PROBLEMS = {
  'answer-missing': 'Nothing was answered.',
  'answer-unknown-item': "The answer names something that wasn't asked.",
  'answer-unknown-word': 'A word in the answer is neither something asked nor a state.',
  'answer-without-state': 'Something asked was named without how it stands.',
  'answer-twice': 'The same thing was answered twice, in different ways.',
  'answer-count': 'States were given in a row, but not as many as there are things asked.',
  'answer-ambiguous': 'What was named could be more than one of the things asked.',
  'answer-not-a-number': 'A number of volts was asked and something else was answered.',
  'answer-no-such-choice': 'None of the choices was meant.',
  'answer-other-kind': 'The answer belongs to another kind of question.',
  'answer-impossible-state': "A state that this thing can't have.",
  'question-unknown-item': "A question asks for something that its circuit hasn't got.",
  'question-asked-twice': 'A question asks for the same thing twice.',
  'question-not-certain':
    'The scenario has no single outcome: it depends on which relay is faster, or nothing comes to rest.',
  'question-not-offered': 'What is right is not among the possible answers.',
  'question-between': 'What is asked lies between two states, so no answer could be defended.',
  'question-no-such-step': 'A question asks for the state after more acts than there are.',
  'question-choices': 'Not exactly one of the choices does what is wanted.',
} as const;

export type QuestionCode = keyof typeof QUESTION_PROBLEMS;
