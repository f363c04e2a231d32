/** Around what is emphasised in a sentence. */
type Emphasis = (text: string) => string;

interface Happened {
  readonly device: string;
  readonly to: string;
}

/** A lamp, sounder, valve or motor. */
const loads = { lit: 'lit', dim: 'dim', dark: 'dark', flashing: 'flashing' };
const inputs = { '0': '0', '1': '1', undefined: 'undefined', changing: 'changing' };
/** Positions that devices have of themselves; a selector has its own. */
const positions = {
  rest: 'rest',
  operated: 'operated',
  pressed: 'pressed',
  actuated: 'actuated',
  reset: 'reset',
  tripped: 'tripped',
  in: 'in',
  blown: 'blown',
  open: 'open',
  closed: 'closed',
  off: 'off',
  on: 'on',
};

export const solve = {
  help: {
    summary: 'what a circuit does',
    description:
      'Says what a circuit does: every coil, lamp and input after the acts, how it came about, and why.',
    options: {
      fault: 'what is wrong from the start; may be given several times',
      dead: 'start with isolators and breakers open, as drawn',
      json: 'print the solution as JSON',
    },
    acts: (acts: readonly string[]) => `Acts: ${acts.join(', ')}.`,
    rules: 'What breaks a drawing rule or a rule of practice is told beside the solution, among the errors.',
    exit: 'Exit code 0 for every outcome that is certain, 1 for one that could not be decided; 2 for a mistake in the circuit, the acts or the faults.',
  },
  solvedAsItIs: (count: number) =>
    count === 1
      ? 'Solved as it is, although that breaks a rule.'
      : `Solved as it is, although ${count} things in it break rules.`,
  outcome: ({ strong, outcome }: { strong: Emphasis; outcome: string }) =>
    `${strong('Outcome:')} ${outcome}.`,
  sections: {
    coils: 'Coils',
    lamps: 'Lamps',
    loads: 'Other loads',
    inputs: 'Inputs',
    happened: 'What happened',
    why: 'Why',
  },
  coil: {
    operated: 'operated',
    atRest: 'at rest',
    between: 'between its limits',
    energised: 'energised',
    volts: (volts: number) => `${volts} V`,
  },
  loads,
  inputs,
  positions,
  milliseconds: (ms: number) => `${ms} ms`,
  /** What a device did, and where it came to. */
  happened: {
    energised: ({ device }: Happened) => `${device} energised`,
    'de-energised': ({ device }: Happened) => `${device} de-energised`,
    leaves: ({ device, to }: Happened) => `${device} leaves ${to}`,
    arrives: ({ device, to }: Happened) => `${device} arrives ${to}`,
    lamp: ({ device, to }: Happened) => `${device} lamp ${to}`,
    load: ({ device, to }: Happened) => `${device} load ${to}`,
    input: ({ device, to }: Happened) => `${device} input ${to}`,
    trips: ({ device, to }: Happened) => `${device} trips ${to}`,
  },
  /** Why a contact is open. */
  because: {
    rest: 'open at rest',
    moved: 'open, its device has moved',
    travelling: 'open on its way',
    fault: 'open by a fault',
  },
  openAt: ({ at, because }: { at: string; because: string }) => `${at} (${because})`,
  stoppedAt: (places: readonly string[]) => `stopped at ${places.join(' and ')}`,
  nothingConnects: 'nothing connects it to a supply',
};
