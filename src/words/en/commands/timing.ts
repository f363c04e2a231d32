export const timing = {
  help: {
    summary: 'what happens when, as a diagram',
    description: 'Draws what every coil, lamp and input does over time, while acts are done and timers run.',
    options: {
      operateTimes: 'with the milliseconds that relays take to operate and release',
      output: 'write to this .svg or .pdf; without it the diagram is shown as text',
    },
  },
  noActs: {
    wrong: '--do has no acts, so nothing happens.',
    right: 'For example --do "wait 5 s".',
  },
  title: (circuit: string) => `Timing: ${circuit}`,
  untitled: 'Timing: control circuit',
};
