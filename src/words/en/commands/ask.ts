export const ask = {
  help: {
    summary: 'a fresh question as JSON',
    description:
      'Prints a fresh question as JSON: circuit, scenario, the question in words. Its answer is left out.',
    options: {
      skill: 'a question for this skill of the banks',
      family: (standard: string) => `a circuit of this family (default: ${standard})`,
      kind: (kinds: readonly string[]) => `ask this: ${kinds.join(', ')}`,
      size: 'how big, 1 to 8',
      seed: 'the same seed gives the same question on every machine',
      withAnswer: 'print the right answer too',
      banks: 'question banks for --skill',
    },
  },
  families: (families: readonly string[]) => `Families: ${families.join(', ')}.`,
  noFamily: (family: string) => `There is no family ${family}.`,
  noKind: {
    wrong: (kind: string) => `There is no kind of question ${kind}.`,
    right: (kinds: readonly string[]) => `Kinds: ${kinds.join(', ')}.`,
  },
  noCircuit: {
    wrong: (skill: string) => `No circuit was found for ${skill}.`,
    right: (written: number) => `${written} written questions are in the banks; try another seed.`,
  },
  noQuestion: {
    wrong: ({ family, kinds }: { family: string; kinds: readonly string[] }) =>
      `The family ${family} made no question of the kind ${kinds.join(' or ')}.`,
    right: 'Try another kind, size or seed.',
  },
};
