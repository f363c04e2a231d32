import { answers, faults, learners } from './counted.ts';

export const rebuild = {
  help: {
    summary: 'work out anew what follows from the answers',
    description:
      'Works out anew, from the answers alone, what each learner remembers. Answers are never changed by it.',
    options: {
      check: 'only look: is everything that is kept whole and consistent?',
      marks: 'mark every answer again with the solver first',
      restored: 'a backup was put back: let devices send again what they have',
    },
    note: 'Exit code 1 when --check finds something.',
  },
  faultOf: ({ learner, told }: { learner: string; told: string }) => `${learner}: ${told}`,
  allWell: 'Everything is as it should be.',
  faultsFound: (count: number) => `${faults(count)} found.`,
  markedOtherwise: ({ learner, number, id }: { learner: string; number: number; id: string }) =>
    `${learner}: answer ${number} (${id}) has another mark now; the first one is kept beside it.`,
  markedAgain: ({ marked, changed }: { marked: number; changed: number }) =>
    `${answers(marked)} marked again, ${changed} otherwise than before.`,
  leftAsBefore: (count: number) => `${answers(count)} could not be read or marked and stayed as before.`,
  rebuilt: (counts: { answers: number; learners: number }) =>
    `What is remembered was worked out anew from ${answers(counts.answers)} of ${learners(counts.learners)}.`,
};
