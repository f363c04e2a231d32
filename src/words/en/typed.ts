/** Words that people type in an answer, for readers that forgive. All in small letters. */

export const typed = {
  /** By kind of thing, in the order of its states: what is written for each besides its own name. */
  states: {
    lamp: [
      ['on', '1', 'yes', 'y', 'true', 'bright', 'light', 'lights', 'glows', 'illuminated'],
      ['off', '0', 'no', 'n', 'false', 'out', 'unlit', 'extinguished'],
      ['half', 'weak', 'dimmed', 'faint'],
      ['flash', 'flashes', 'blinks', 'blinking', 'blink'],
    ],
    load: [
      ['1', 'yes', 'y', 'true', 'lit', 'runs', 'running', 'open', 'sounds'],
      ['0', 'no', 'n', 'false', 'dark', 'stopped', 'silent', 'out'],
      ['dim', 'half'],
      ['pulses', 'flashing', 'intermittent'],
    ],
    input: [
      ['on', 'high', 'yes', 'y', 'true', 'one', 'h'],
      ['off', 'low', 'no', 'n', 'false', 'zero', 'l'],
      ['between', 'unclear', 'indefinite'],
      ['changes', 'flashing', 'toggling'],
    ],
    relay: [
      [
        '1',
        'on',
        'yes',
        'y',
        'true',
        'energised',
        'energized',
        'up',
        'in',
        'picked',
        'pulled',
        'operates',
        'made',
      ],
      [
        '0',
        'off',
        'no',
        'n',
        'false',
        'released',
        'de-energised',
        'de-energized',
        'down',
        'dropped',
        'resting',
      ],
      ['changes', 'flashing', 'switching'],
    ],
    terminal: [
      ['1', 'on', 'yes', 'y', 'true', 'hot', 'energised', 'energized'],
      ['0', 'off', 'no', 'n', 'false', 'safe', 'de-energised', 'de-energized'],
    ],
  },
  none: ['none', 'nothing', 'neither', 'noone', 'no-one'],
  all: ['all', 'both', 'every', 'everything', 'each'],
  /** Leaves one out. */
  skip: ['skip'],
  /** Stand between words and mean nothing. */
  between: ['and', 'are', 'is', 'the'],
  /** `after 2`: before the number of an act. */
  after: ['after', 'act', 'step'],
  start: ['start'],
  /** Words before which `start` is the same. */
  atTheStart: 'at the start',
  /** Before the number of a choice. */
  choice: ['choice', 'answer', 'number', 'no.', 'no'],
  /** Between the two terminals of a choice. */
  to: ['and', 'to'],
  /** A meter that shows nothing. */
  noReading: ['nothing', 'none', 'no', 'no reading', 'no voltage', 'no volts', 'floating', 'blank', 'null'],
  /** Before a number of volts. */
  about: ['about', 'ca', 'ca.', 'approx', 'approx.'],
  volts: ['volt', 'volts'],
};
