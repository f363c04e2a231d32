/** A ferry berth: the ramp, its hydraulics, barriers, pumps and signals. */
import {
  absence,
  chain,
  condition,
  delayed,
  drive,
  lifting,
  movement,
  signal,
  trio,
  turning,
} from './entries.ts';
import type { Plant } from './types.ts';

export const ferryRamp: Plant = {
  id: 'ferry-ramp',
  name: 'Ferry ramp',
  signals: [
    signal('Ramp #', 'limit', '~ landed/normal', '~ not landed/abnormal'),
    signal('Ramp #', 'limit', '~ raised/normal', '~ not raised/neutral'),
    signal('Ramp lock #', 'limit', '~ in/normal', '~ not in/abnormal'),
    signal('Barrier #', 'limit', '~ down/normal', '~ not down/abnormal'),
    signal('Hydraulic pump #', 'contact', '~ tripped/abnormal', '~ healthy/normal'),
    signal('Hydraulic pump #', 'contact', '~ running/normal', '~ stopped/neutral'),
    signal('Oil tank #', 'float', '~ low/emergency', '~ not low/normal'),
    signal('Hoist rope #', 'limit', '~ slack/emergency', '~ taut/normal'),
    signal('Bilge well #', 'float', '~ high/abnormal', '~ not high/normal'),
    signal('Bow visor', 'limit', 'Bow visor raised/normal', 'Bow visor not raised/abnormal'),
    signal('Oil filter #', 'contact', '~ choked/abnormal', '~ clear/normal'),
    signal('Winch brake #', 'limit', '~ lifted/neutral', '~ on/neutral'),
  ],
  drives: [
    drive('Hydraulic pump #', 'running', { startsUnloaded: true }),
    drive('Mail belt #', 'running', { jogs: true }),
    drive('Ballast pump #', 'pumping'),
    drive('Baggage belt #', 'running', { jogs: true }),
    drive('Waiting room fan #', 'running'),
  ],
  twoHand: [drive('Rope ferrule press #', 'pressing'), drive('Sheet guillotine #', 'cutting')],
  movements: [
    turning('Baggage belt #', ['~ aboard', '~ running aboard'], ['~ ashore', '~ running ashore']),
    turning('Waiting room fan #', ['~ inwards', '~ blowing in'], ['~ outwards', '~ blowing out']),
    lifting('Ramp #', ['Raise ~', '~ rising', '~ raised'], ['Lower ~', '~ lowering', '~ landed']),
    movement('Barrier #', ['Raise ~', '~ rising', '~ up'], ['Lower ~', '~ lowering', '~ down']),
    lifting('Gangway #', ['Run out ~', '~ running out', '~ out'], ['Draw in ~', '~ drawing in', '~ in']),
  ],
  pairs: [
    {
      thing: 'Hydraulic pumps',
      units: ['Hydraulic pump A', 'Hydraulic pump B'],
      demand: 'Oil pressure low',
    },
    {
      thing: 'Bilge pumps',
      units: ['Port bilge pump', 'Starboard bilge pump'],
      demand: 'Bilge level high',
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
        condition('Ferry moored', 'limit'),
        condition('Barrier down', 'limit'),
        condition('Lock drawn', 'limit'),
        absence('Rope not slack', 'Rope slack', 'limit'),
        absence('Oil level not low', 'Oil level low', 'float'),
        condition('Oil pressure present', 'contact'),
        absence('Swell not high', 'Swell high', 'contact'),
      ],
      'Ramp # may be lowered',
      'Ramp # may not be lowered',
    ),
    chain(
      'Road signal #',
      [
        condition('Ramp landed', 'limit'),
        condition('Barrier up', 'limit'),
        condition('Visor raised', 'limit'),
        absence('No stop called', 'Stop called', 'contact'),
        absence('Deck not full', 'Deck full', 'contact', 'passable'),
        absence('Pump not tripped', 'Pump tripped', 'contact'),
      ],
      'Road signal # may be green',
      'Road signal # stays red',
    ),
  ],
  trios: [
    trio('High level in bilge well #', 'float', 'Bilge float #@', 'High level trip, bilge well #/emergency'),
    trio('Low level in oil tank #', 'float', 'Oil float #@', 'Low level trip, oil tank #/emergency'),
    trio('Swell at berth #', 'contact', 'Swell sensor #@', 'Swell trip, berth #/abnormal'),
  ],
  startsLate: [
    delayed('Barrier #', '~ called down', '~ not called down', '~ goes down', '~ stays up'),
    delayed('Waiting room fan #', 'Waiting room # warm', 'Waiting room # cool', '~ runs', '~ off'),
    delayed('Bilge well #', '~ high', '~ not high', '~ alarm', 'No alarm at ~', 'abnormal'),
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
    delayed('Hydraulic pump #', 'Lever # off centre', 'Lever # centred', '~ on', '~ off'),
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
