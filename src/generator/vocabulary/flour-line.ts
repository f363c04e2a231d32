/** Milling: elevators, screws, sifters, bins, filters. */
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

export const flourLine: Plant = {
  id: 'flour-line',
  name: 'Flour line',
  signals: [
    signal('Bucket elevator #', 'contact', '~ tripped/abnormal', '~ healthy/normal'),
    signal('Bucket elevator #', 'contact', '~ running/normal', '~ stopped/neutral'),
    signal('Elevator belt #', 'limit', '~ off track/emergency', '~ on track/normal'),
    signal('Screw conveyor #', 'contact', '~ choked/abnormal', '~ clear/normal'),
    signal('Bin #', 'contact', '~ full/neutral', '~ not full/neutral'),
    signal('Bin #', 'contact', '~ empty/abnormal', '~ not empty/normal'),
    signal('Slide #', 'limit', '~ open/neutral', '~ not open/neutral'),
    signal('Sifter #', 'contact', '~ tripped/abnormal', '~ healthy/normal'),
    signal('Dust filter #', 'contact', '~ blocked/abnormal', '~ clear/normal'),
    signal('Rotary valve #', 'contact', '~ turning/normal', '~ standing/abnormal'),
    signal('Bin door #', 'limit', '~ open/abnormal', '~ shut/normal'),
    signal('Damping tank #', 'float', '~ low/abnormal', '~ not low/normal'),
  ],
  drives: [
    drive('Bucket elevator #', 'running'),
    drive('Screw conveyor #', 'running', { jogs: true }),
    drive('Roller mill #', 'grinding', { startsUnloaded: true }),
    drive('Sifter #', 'sifting'),
    drive('Sack belt #', 'running', { jogs: true }),
    drive('Filter fan #', 'running', { startsUnloaded: true }),
  ],
  twoHand: [drive('Sack press #', 'pressing'), drive('Bale clamp #', 'clamping')],
  movements: [
    movement('Slide #', ['Open ~', '~ opening', '~ open'], ['Shut ~', '~ shutting', '~ shut']),
    turning('Sack belt #', ['~ forward', '~ running forward'], ['~ back', '~ running back']),
    turning('Reversing screw #', ['~ to mill', '~ running to mill'], ['~ to bins', '~ running to bins']),
    movement(
      'Shuttle belt #',
      ['~ left', '~ going left', '~ at left end'],
      ['~ right', '~ going right', '~ at right end'],
    ),
    lifting('Sack lift #', ['Raise ~', '~ rising', '~ at top'], ['Lower ~', '~ lowering', '~ at bottom']),
  ],
  pairs: [
    {
      thing: 'Blowers',
      units: ['Blower A', 'Blower B'],
      demand: 'Air pressure low',
    },
    {
      thing: 'Filter fans',
      units: ['East filter fan', 'West filter fan'],
      demand: 'Mill running',
    },
  ],
  sumps: [
    { thing: 'Wash pit #', pump: 'Wash pump #' },
    { thing: 'Elevator pit #', pump: 'Pit pump #' },
  ],
  chains: [
    chain('Roller mill #', [
      condition('Elevator running', 'contact'),
      condition('Filter fan running', 'contact'),
      condition('Guard shut', 'limit'),
      absence('Bin below not full', 'Bin below full', 'contact', 'passable'),
      absence('Bearing not hot', 'Bearing hot', 'contact'),
      absence('Dust filter clear', 'Dust filter blocked', 'contact'),
      condition('Roll gap set', 'limit'),
    ]),
    chain('Bucket elevator #', [
      absence('Belt on track', 'Belt off track', 'limit'),
      absence('Boot not choked', 'Boot choked', 'contact'),
      absence('Drive not tripped', 'Drive tripped', 'contact'),
      condition('Screw below running', 'contact', 'passable'),
      condition('Hatch shut', 'limit'),
      condition('Brake lifted', 'limit'),
    ]),
  ],
  trios: [
    trio('High level in bin #', 'contact', 'Bin probe #@', 'High level trip, bin #/abnormal'),
    trio(
      'Pressure at dust filter #',
      'contact',
      'Filter pressure switch #@',
      'High pressure trip, dust filter #/abnormal',
    ),
    trio('Bearings of mill #', 'contact', 'Bearing sensor #@', 'Bearing trip, mill #/abnormal'),
  ],
  startsLate: [
    delayed('Bucket elevator #', 'Elevator # called for', 'Elevator # not called for', '~ runs', '~ stopped'),
    delayed('Bin #', '~ full', '~ not full', '~ alarm', 'No alarm at ~', 'abnormal'),
    delayed(
      'Roller mill #',
      'Feed at mill #',
      'No feed at mill #',
      'Rolls of mill # engaged',
      'Rolls of mill # apart',
    ),
  ],
  runsOn: [
    delayed('Screw conveyor #', 'Mill # running', 'Mill # stopped', '~ on', '~ off'),
    delayed('Filter fan #', 'Elevator # running', 'Elevator # stopped', '~ on', '~ off'),
    delayed(
      'Shaker of filter #',
      'Dust filter # blocked',
      'Dust filter # clear',
      'Filter shaker # on',
      'Filter shaker # off',
    ),
  ],
};
