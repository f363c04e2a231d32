/** Why there is no question. */
export const practice = {
  nothingToDo: 'Nothing needs practice now.',
  noNewCircuit: (skill: string): string => `No new circuit was found for ${skill}.`,
};
