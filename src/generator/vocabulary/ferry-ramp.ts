/** A ferry berth: the ramp, its hydraulics, barriers, pumps and signals. */
import { condition, delayed, movement, signal, trio } from './entries.ts';
import type { Plant } from './types.ts';

export const ferryRamp: Plant = {
  id: 'ferry-ramp',
  name: 'Ferry ramp',
  signals: [
    signal('Ramp #', 'limit', 'landed/normal', 'not landed/abnormal'),
    signal('Ramp #', 'limit', 'raised/normal', 'not raised/neutral'),
    signal('Ramp lock #', 'limit', 'locked/normal', 'unlocked/abnormal'),
    signal('Barrier #', 'limit', 'down/normal', 'not down/neutral'),
    signal('Hydraulic pump #', 'contact', 'tripped/abnormal', 'healthy/normal'),
    signal('Hydraulic pump #', 'contact', 'running/normal', 'standing/neutral'),
    signal('Oil tank #', 'float', 'level low/emergency', 'level normal/normal'),
    signal('Slack rope #', 'limit', 'slack/emergency', 'taut/normal'),
    signal('Bilge well #', 'float', 'level high/abnormal', 'level normal/normal'),
    signal('Bow visor', 'limit', 'clear/normal', 'not clear/abnormal'),
    signal('Oil filter #', 'contact', 'choked/abnormal', 'clear/normal'),
    signal('Winch brake #', 'limit', 'lifted/neutral', 'applied/neutral'),
  ],
  drives: [
    { thing: 'Hydraulic pump #', running: 'running', startsUnloaded: true },
    { thing: 'Mooring winch #', running: 'hauling' },
    { thing: 'Ballast pump #', running: 'pumping' },
    { thing: 'Waiting room fan #', running: 'running' },
  ],
  twoHand: [
    { thing: 'Rope ferrule press #', running: 'pressing' },
    { thing: 'Sheet guillotine #', running: 'cutting' },
  ],
  movements: [
    movement('Ramp #', ['Raise', 'rising', 'raised'], ['Lower', 'lowering', 'landed']),
    movement('Barrier #', ['Up', 'going up', 'up'], ['Down', 'going down', 'down']),
    movement('Gangway #', ['Out', 'going out', 'out'], ['In', 'coming in', 'in']),
  ],
  pairs: [
    { thing: 'Hydraulic pumps', units: ['Hydraulic pump A', 'Hydraulic pump B'] },
    { thing: 'Bilge pumps', units: ['Port bilge pump', 'Starboard bilge pump'] },
  ],
  sumps: [
    { thing: 'Bilge well #', pump: 'Bilge pump #' },
    { thing: 'Ramp pit #', pump: 'Pit pump #' },
  ],
  chains: [
    {
      thing: 'Ramp #',
      may: 'Ramp # may be lowered',
      kept: 'Ramp # kept up',
      conditions: [
        condition('Ferry moored', 'limit', 'acted'),
        condition('Barrier down', 'limit', 'acted'),
        condition('Lock drawn', 'limit', 'acted'),
        condition('Rope not slack', 'limit', 'rest'),
        condition('Oil level not low', 'float', 'rest'),
        condition('Oil pressure present', 'contact', 'acted'),
        condition('Swell not high', 'contact', 'rest'),
      ],
    },
    {
      thing: 'Road signal #',
      may: 'Road signal # may be green',
      kept: 'Road signal # kept red',
      conditions: [
        condition('Ramp landed', 'limit', 'acted'),
        condition('Barrier up', 'limit', 'acted'),
        condition('Visor clear', 'limit', 'acted'),
        condition('No stop called', 'contact', 'rest'),
        condition('Deck not full', 'contact', 'rest', 'passable'),
        condition('Pump not tripped', 'contact', 'rest'),
      ],
    },
  ],
  trios: [
    trio('Bilge well # level', 'float', 'Bilge high', 'abnormal'),
    trio('Oil tank # level', 'float', 'Oil level low', 'emergency'),
    trio('Berth # swell', 'contact', 'Swell high', 'abnormal'),
  ],
  startsLate: [
    delayed('Barrier #', 'Ramp called', 'Ramp not called', 'Barrier # goes down'),
    delayed('Ramp #', 'Ramp called', 'Ramp not called', 'Ramp # lowering valve open'),
    delayed('Bilge well #', 'Level high', 'Level normal', 'Bilge well # alarm', 'abnormal'),
  ],
  runsOn: [
    delayed('Ramp # beacon', 'Ramp moving', 'Ramp standing', 'Ramp # beacon on'),
    delayed('Hydraulic pump #', 'Lever off centre', 'Lever centred', 'Hydraulic pump # runs on'),
    delayed('Deck lights', 'Barrier up', 'Barrier down', 'Deck lights on'),
  ],
};
