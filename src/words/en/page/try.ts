import { speech } from '../speech.ts';

export const tryIt = {
  title: 'Try it',
  circuit: 'Circuit',
  ofLastQuestion: (title: string | undefined) => `Of the question answered last: ${title ?? 'untitled'}`,
  noneYet: 'No circuit yet: answer a question, or read a lesson.',
  aCircuit: 'A circuit',
  atRest: 'At rest',
  switchingOn: 'Switching on…',
  /** How far it has been worked. */
  done: (acts: number) =>
    acts === 0 ? 'Switched on' : speech.plural(acts, { one: 'After 1 act', other: 'After # acts' }),
  /** What a touch does. */
  ways: { label: 'What a touch on the drawing does', work: 'Work it', measure: 'Measure', break: 'Break' },
  standing: (readings: readonly { readonly item: string; readonly state: string }[]) =>
    `The circuit as it stands: ${readings.map(({ item, state }) => `${item} ${state}`).join(', ')}`,
  asItStands: 'As it stands',
  /** Where it doesn't come to rest. */
  trouble: {
    keepsSwitching: (devices: readonly string[]) =>
      speech.plural(devices.length, {
        one: `It keeps switching: ${devices.join(', ')} never rests.`,
        other: `It keeps switching: ${devices.join(', ')} never rest.`,
      }),
    race: (devices: readonly string[]) =>
      `A race: which of ${devices.join(', ')} is faster decides how it ends. Shown is one way.`,
    undecided:
      'Not decided: there are more orders of operation than can be tried. What is shown need not be what happens.',
    tripped: (devices: readonly string[]) => `A short circuit: ${devices.join(', ')} opened.`,
    unprotected: 'A short circuit: nothing protects it, the supply opened.',
  },
  work: {
    title: 'Do',
    takeBack: 'Take back',
    fromTheStart: 'From the start',
  },
  meter: {
    title: 'Meter',
    note: 'Touch two terminals on the drawing, or choose them here. Lead 2 is the reference.',
    first: 'Lead 1',
    second: 'Lead 2',
    /** On the drawing, at a terminal. */
    onTerminal: (lead: number) => `lead ${lead}`,
    hangsFree: 'hangs free',
    oneHangsFree: 'The other lead hangs free.',
    bothHangFree: 'Both leads hang free.',
    shows: ({ first, second, shown }: { first: string; second: string; shown: string }) =>
      `${first} against ${second}: ${shown}.`,
    showsNothing: ({ first, second }: { first: string; second: string }) =>
      `${first} against ${second}: it shows nothing. The two points have no common reference: they are on isolated supplies, or one hangs free.`,
    caution:
      'On a drawing a meter is safe. On a real panel: isolate, lock off, prove dead with a proved tester, and prove the tester again; mind supplies from elsewhere that stay live. Local codes and licensed practice decide who may measure live, and how.',
  },
  conductors: {
    title: 'Break a conductor',
    note: 'Touch a terminal on the drawing, or choose it here: its conductor comes off. Touch it again and it is back.',
    takeOff: 'Take the conductor off',
    offAtTerminal: 'off at terminal…',
    /** On the drawing, at a terminal. */
    off: 'off',
    offAt: 'off at {terminal}',
    areOffAt: (terminals: readonly string[]) => `The conductor is off at ${terminals.join(', ')}.`,
    putBack: 'Put it back',
    caution:
      'On a real panel no conductor is taken off live: isolate, lock off, prove dead with a proved tester, and mind supplies from elsewhere that stay live. Local codes and licensed practice apply.',
  },
};

export type TryWords = typeof tryIt;
