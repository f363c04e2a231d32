/** Classes, sets and people that are named. */
export const named = {
  class: {
    none: (called: string) => `There is no class ${called}.`,
    several: ({ count, called }: { count: number; called: string }) =>
      `There are ${count} classes that ${called} could be.`,
    otherwise: 'polewise class new makes one.',
  },
  set: {
    none: (called: string) => `There is no set ${called}.`,
    several: ({ count, called }: { count: number; called: string }) =>
      `There are ${count} sets that ${called} could be.`,
    otherwise: 'polewise homework new makes one.',
  },
  person: {
    none: (called: string) => `There is nobody called ${called}.`,
    several: ({ count, called }: { count: number; called: string }) =>
      `There are ${count} people that ${called} could be.`,
    otherwise: 'polewise class show names those in a class.',
  },
  nameByTheId: 'Name the one you mean by the id:',
  thereAre: 'There are:',
};
