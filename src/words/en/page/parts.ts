/** What stands on several screens: drawings and their run, fields, shares. */
export const parts = {
  /** `42 %` of a share from 0 to 1. */
  share: (share: number) => `${Math.round(100 * share)} %`,
  drawing: {
    board: 'Drawing',
    underWay: 'Drawing…',
    failed: (why: string) => `The drawing could not be made: ${why}`,
    atRest: (title: string | undefined) => `Control drawing: ${title ?? 'a circuit'}, at rest.`,
    after: (title: string | undefined) =>
      `Control drawing: ${title ?? 'a circuit'}, after what the text says.`,
    /** As the circuit is asked about. */
    asked: (title: string) =>
      `Control drawing: ${title}. Everything is drawn at rest. Further down it stands in words.`,
    inTheEnd: 'The circuit as it stands in the end.',
    inWords: 'The drawing in words',
    /** Something to touch, and the state that it is given. */
    given: ({ label, state }: { label: string; state: string }) => `${label}: ${state}`,
  },
  timing: {
    title: 'What changes when',
    description:
      'Timing diagram: a line for each device that changes. The steps of the run say the same in words.',
  },
  /** The face of a meter. */
  meter: {
    volts: (volts: number) => `${volts} V`,
    nothing: 'nothing',
    notYet: '? V',
    underWay: '…',
  },
  player: {
    atThisMoment: (caption: string) => `The circuit at this moment. ${caption}`,
    back: 'Back',
    stop: 'Stop',
    run: 'Run it',
    on: 'On',
    moment: 'Moment of the run',
    momentOf: ({ at, of, caption }: { at: number; of: number; caption: string }) =>
      `${at} of ${of}: ${caption}`,
  },
  copy: {
    copy: 'Copy',
    copyOf: ({ label, what }: { label: string; what: string }) => `${label}: ${what}`,
    copied: 'Copied.',
    refused: 'This browser lets no page copy: mark the text and copy it.',
  },
  field: {
    show: 'Show',
    hide: 'Hide',
    showOf: (label: string) => `Show ${label.toLowerCase()}`,
    hideOf: (label: string) => `Hide ${label.toLowerCase()}`,
  },
  onWithHomework: 'Go on with your homework',
};
