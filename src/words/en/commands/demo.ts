export const demo = {
  help: {
    summary: 'a made-up class with three weeks of work, to look at',
    description:
      'Makes up a class of fitters at a flour line with three weeks of practice and homework, and serves it, so that every screen and report can be looked at.',
    options: {
      data: 'where the made-up class is kept',
      port: 'the port; 0 takes any that is free',
      fresh: 'make it anew, up to today',
      noServe: 'make it and end',
    },
  },
  notInADatabase: {
    wrong: 'The demo is kept in a folder of its own, and DATABASE_URL names a database.',
    right: 'Run it with DATABASE_URL empty.',
  },
  makingUp: 'Making up a class of fitters at a flour line, with three weeks of work: about half a minute.',
  madeUp: 'All people and all their work are made up. They sign in with these names:',
  tutor: 'tutor',
  administrator: 'administrator',
  learners: 'learners',
  andMore: (names: readonly string[]) => `${names.join(', ')}, …`,
  password: (password: string) => `and all with the password ${password}`,
};
