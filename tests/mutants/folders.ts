/** Which code is changed, and which tests have to notice. */
interface Folder {
  readonly code: readonly string[];
  readonly tests: readonly string[];
}

export const FOLDERS: Readonly<Record<string, Folder>> = {
  solver: {
    code: ['src/solver/**/*.ts', 'src/graph/*.ts'],
    tests: [
      'tests/solver/{agreement,coils,dead-ends,faults,flashing,hold,islands,limits,protection}.test.ts',
      'tests/solver/{race-brute-force,resistors,rings,run-in-time,trace,two-currents,voltages}.test.ts',
      'tests/solver/{fails-safe,green-means-well,locked-both-ways,no-restart}.test.ts',
      'tests/solver/{short-circuit,stop-wins}.test.ts',
      'tests/graph/graph.test.ts',
      'tests/published/{limits-and-changeovers,race-examples,three-phase}.test.ts',
      'tests/practice-of-the-trade/changeover-pole.test.ts',
      // Machines that are wrong in one way.
      'tests/misconceptions/three-circuits.test.ts',
    ],
  },
  misconceptions: { code: ['src/misconceptions/*.ts'], tests: ['tests/misconceptions/**/*.test.ts'] },
  questions: {
    code: ['src/questions/**/*.ts'],
    tests: [
      'tests/questions/{asking,contract,explanation,marking,proposing,read-answer,still-live,told}.test.ts',
    ],
  },
  acceptance: {
    code: ['src/generator/accept.ts', 'src/generator/difficulty.ts', 'src/generator/features.ts'],
    tests: ['tests/generator/{accept,features}.test.ts'],
  },
  memory: { code: ['src/memory/*.ts'], tests: ['tests/memory/**/*.test.ts'] },
  homework: {
    code: ['src/homework/**/*.ts'],
    tests: ['tests/homework/**/*.test.ts', 'tests/published/{item-statistics,interchange-*}.test.ts'],
  },
  // PostgreSQL runs the same tests, and takes ten times as long.
  store: {
    code: ['src/store/**/*.ts', '!src/store/migrations/**', '!src/store/postgres*.ts'],
    tests: [
      'tests/store/sqlite.test.ts',
      'tests/store/{failures,homework,people,record-text,new-id}.test.ts',
    ],
  },
  authorisation: {
    code: [
      'src/server/people/*.ts',
      '!src/server/people/roster-*.ts',
      'src/server/homework/{access,guard}.ts',
    ],
    tests: [
      'tests/server/people/**/*.test.ts',
      'tests/server/homework/access.test.ts',
      'tests/server/{roles,signing-in,tries}.test.ts',
    ],
  },
  'web-local': {
    code: ['src/web/local/*.ts', 'src/web/learner.ts', 'src/web/engine/memory-kept.ts'],
    tests: ['tests/web/{learner,memory-kept,sync,one-memory,store-fails,newer-server,never-answers}.test.ts'],
  },
  kept: {
    code: ['src/web/local/homework/**/*.ts'],
    tests: [
      'tests/web/homework-{outbox,page,reached,sending}.test.ts',
      'tests/web/{learner,never-answers,store-fails}.test.ts',
    ],
  },
};
