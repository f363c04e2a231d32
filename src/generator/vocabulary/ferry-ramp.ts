/** A ferry berth: the ramp, its hydraulics, barriers, pumps and signals. */
import { chain, condition, delayed, movement, signal, trio } from './entries.ts';
import type { Plant } from './types.ts';

export const ferryRamp: Plant = {
  id: 'ferry-ramp',
  name: 'Ferry ramp',
  signals: [
    signal('Ramp #', 'limit', 'Ramp # landed/normal', 'Ramp # not landed/abnormal'),
    signal('Ramp #', 'limit', 'Ramp # raised/normal', 'Ramp # not raised/neutral'),
    signal('Ramp lock #', 'limit', 'Ramp lock # in/normal', 'Ramp lock # not in/abnormal'),
    signal('Barrier #', 'limit', 'Barrier # down/normal', 'Barrier # not down/abnormal'),
    signal(
      'Hydraulic pump #',
      'contact',
      'Hydraulic pump # tripped/abnormal',
      'Hydraulic pump # healthy/normal',
    ),
    signal(
      'Hydraulic pump #',
      'contact',
      'Hydraulic pump # running/normal',
      'Hydraulic pump # stopped/neutral',
    ),
    signal('Oil tank #', 'float', 'Oil tank # low/emergency', 'Oil tank # not low/normal'),
    signal('Hoist rope #', 'limit', 'Hoist rope # slack/emergency', 'Hoist rope # taut/normal'),
    signal('Bilge well #', 'float', 'Bilge well # high/abnormal', 'Bilge well # not high/normal'),
    signal('Bow visor', 'limit', 'Bow visor raised/normal', 'Bow visor not raised/abnormal'),
    signal('Oil filter #', 'contact', 'Oil filter # choked/abnormal', 'Oil filter # clear/normal'),
    signal('Winch brake #', 'limit', 'Winch brake # lifted/neutral', 'Winch brake # on/neutral'),
  ],
  drives: [
    { thing: 'Hydraulic pump #', running: 'running', startsUnloaded: true },
    { thing: 'Mooring winch #', running: 'hauling', jogs: true },
    { thing: 'Ballast pump #', running: 'pumping' },
    { thing: 'Baggage belt #', running: 'running', jogs: true },
    { thing: 'Waiting room fan #', running: 'running' },
  ],
  twoHand: [
    { thing: 'Rope ferrule press #', running: 'pressing' },
    { thing: 'Sheet guillotine #', running: 'cutting' },
  ],
  movements: [
    movement(
      'Ramp #',
      ['Raise ramp #', 'Ramp # rising', 'Ramp # raised'],
      ['Lower ramp #', 'Ramp # lowering', 'Ramp # landed'],
    ),
    movement(
      'Barrier #',
      ['Raise barrier #', 'Barrier # rising', 'Barrier # up'],
      ['Lower barrier #', 'Barrier # lowering', 'Barrier # down'],
    ),
    movement(
      'Gangway #',
      ['Run out gangway #', 'Gangway # running out', 'Gangway # out'],
      ['Draw in gangway #', 'Gangway # drawing in', 'Gangway # in'],
    ),
  ],
  pairs: [
    {
      thing: 'Hydraulic pumps',
      units: ['Hydraulic pump A', 'Hydraulic pump B'],
      demand: 'Oil pressure low',
      none: 'No hydraulic pump running',
    },
    {
      thing: 'Bilge pumps',
      units: ['Port bilge pump', 'Starboard bilge pump'],
      demand: 'Bilge level high',
      none: 'No bilge pump running',
    },
  ],
  sumps: [
    { thing: 'Bilge well #', pump: 'Bilge pump #' },
    { thing: 'Ramp pit #', pump: 'Pit pump #' },
  ],
  chains: [
    chain(
      'Ramp #',
      [
        condition('Ferry moored', 'limit', 'acted'),
        condition('Barrier down', 'limit', 'acted'),
        condition('Lock drawn', 'limit', 'acted'),
        condition('Rope not slack', 'limit', 'rest'),
        condition('Oil level not low', 'float', 'rest'),
        condition('Oil pressure present', 'contact', 'acted'),
        condition('Swell not high', 'contact', 'rest'),
      ],
      'Ramp # may be lowered',
      'Ramp # may not be lowered',
    ),
    chain(
      'Road signal #',
      [
        condition('Ramp landed', 'limit', 'acted'),
        condition('Barrier up', 'limit', 'acted'),
        condition('Visor raised', 'limit', 'acted'),
        condition('No stop called', 'contact', 'rest'),
        condition('Deck not full', 'contact', 'rest', 'passable'),
        condition('Pump not tripped', 'contact', 'rest'),
      ],
      'Road signal # may be green',
      'Road signal # stays red',
    ),
  ],
  trios: [
    trio(
      'High level in bilge well #',
      'float',
      'Bilge float #@',
      'High level at float #@/abnormal',
      'High level trip, bilge well #/emergency',
      'No high level trip, bilge well #',
    ),
    trio(
      'Low level in oil tank #',
      'float',
      'Oil float #@',
      'Low level at float #@/abnormal',
      'Low level trip, oil tank #/emergency',
      'No low level trip, oil tank #',
    ),
    trio(
      'Swell at berth #',
      'contact',
      'Swell sensor #@',
      'High swell at sensor #@/abnormal',
      'Swell trip, berth #/abnormal',
      'No swell trip, berth #',
    ),
  ],
  startsLate: [
    delayed(
      'Barrier #',
      'Barrier # called down',
      'Barrier # not called down',
      'Barrier # goes down',
      'Barrier # stays up',
    ),
    delayed(
      'Ramp #',
      'Ramp # called down',
      'Ramp # not called down',
      'Lowering valve # open',
      'Lowering valve # shut',
    ),
    delayed(
      'Bilge well #',
      'Bilge well # high',
      'Bilge well # not high',
      'Bilge well # alarm',
      'No alarm at bilge well #',
      'abnormal',
    ),
  ],
  runsOn: [
    delayed(
      'Beacon of ramp #',
      'Ramp # moving',
      'Ramp # still',
      'Ramp beacon # on',
      'Ramp beacon # off',
      'neutral',
    ),
    delayed(
      'Hydraulic pump #',
      'Lever # off centre',
      'Lever # centred',
      'Hydraulic pump # on',
      'Hydraulic pump # off',
    ),
    delayed(
      'Deck lights',
      'Barrier # up',
      'Barrier # not up',
      'Deck lights on',
      'Deck lights off',
      'neutral',
    ),
  ],
};
