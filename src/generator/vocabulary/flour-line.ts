/** Milling: elevators, screws, sifters, bins, filters. */
import { chain, condition, delayed, movement, signal, trio } from './entries.ts';
import type { Plant } from './types.ts';

export const flourLine: Plant = {
  id: 'flour-line',
  name: 'Flour line',
  signals: [
    signal(
      'Bucket elevator #',
      'contact',
      'Bucket elevator # tripped/abnormal',
      'Bucket elevator # healthy/normal',
    ),
    signal(
      'Bucket elevator #',
      'contact',
      'Bucket elevator # running/normal',
      'Bucket elevator # stopped/neutral',
    ),
    signal(
      'Elevator belt #',
      'limit',
      'Elevator belt # off track/emergency',
      'Elevator belt # on track/normal',
    ),
    signal(
      'Screw conveyor #',
      'contact',
      'Screw conveyor # choked/abnormal',
      'Screw conveyor # clear/normal',
    ),
    signal('Bin #', 'contact', 'Bin # full/neutral', 'Bin # not full/neutral'),
    signal('Bin #', 'contact', 'Bin # empty/abnormal', 'Bin # not empty/normal'),
    signal('Slide #', 'limit', 'Slide # open/neutral', 'Slide # not open/neutral'),
    signal('Sifter #', 'contact', 'Sifter # tripped/abnormal', 'Sifter # healthy/normal'),
    signal('Dust filter #', 'contact', 'Dust filter # blocked/abnormal', 'Dust filter # clear/normal'),
    signal('Rotary valve #', 'contact', 'Rotary valve # turning/normal', 'Rotary valve # standing/abnormal'),
    signal('Duct #', 'contact', 'Spark in duct #/emergency', 'No spark in duct #/normal'),
    signal('Damping tank #', 'float', 'Damping tank # low/abnormal', 'Damping tank # not low/normal'),
  ],
  drives: [
    { thing: 'Bucket elevator #', running: 'running' },
    { thing: 'Screw conveyor #', running: 'running', jogs: true },
    { thing: 'Roller mill #', running: 'grinding', startsUnloaded: true },
    { thing: 'Sifter #', running: 'sifting' },
    { thing: 'Sack belt #', running: 'running', jogs: true },
    { thing: 'Filter fan #', running: 'running', startsUnloaded: true },
  ],
  twoHand: [
    { thing: 'Sack press #', running: 'pressing' },
    { thing: 'Bale clamp #', running: 'clamping' },
  ],
  movements: [
    movement(
      'Slide #',
      ['Open slide #', 'Slide # opening', 'Slide # open'],
      ['Shut slide #', 'Slide # shutting', 'Slide # shut'],
    ),
    movement(
      'Shuttle belt #',
      ['Shuttle belt # left', 'Shuttle belt # going left', 'Shuttle belt # at left end'],
      ['Shuttle belt # right', 'Shuttle belt # going right', 'Shuttle belt # at right end'],
    ),
    movement(
      'Sack lift #',
      ['Raise sack lift #', 'Sack lift # rising', 'Sack lift # at top'],
      ['Lower sack lift #', 'Sack lift # lowering', 'Sack lift # at bottom'],
    ),
  ],
  pairs: [
    {
      thing: 'Blowers',
      units: ['Blower A', 'Blower B'],
      demand: 'Air pressure low',
      none: 'No blower running',
    },
    {
      thing: 'Filter fans',
      units: ['East filter fan', 'West filter fan'],
      demand: 'Mill running',
      none: 'No filter fan running',
    },
  ],
  sumps: [
    { thing: 'Wash pit #', pump: 'Wash pump #' },
    { thing: 'Elevator pit #', pump: 'Pit pump #' },
  ],
  chains: [
    chain('Roller mill #', [
      condition('Elevator running', 'contact', 'acted'),
      condition('Filter fan running', 'contact', 'acted'),
      condition('Guard shut', 'limit', 'acted'),
      condition('Bin below not full', 'contact', 'rest', 'passable'),
      condition('Bearing not hot', 'contact', 'rest'),
      condition('No spark', 'contact', 'rest'),
      condition('Roll gap set', 'limit', 'acted'),
    ]),
    chain('Bucket elevator #', [
      condition('Belt on track', 'limit', 'rest'),
      condition('Boot not choked', 'contact', 'rest'),
      condition('Drive not tripped', 'contact', 'rest'),
      condition('Screw below running', 'contact', 'acted', 'passable'),
      condition('Hatch shut', 'limit', 'acted'),
      condition('Brake lifted', 'limit', 'acted'),
    ]),
  ],
  trios: [
    trio(
      'High level in bin #',
      'contact',
      'Bin probe #@',
      'High level at probe #@/abnormal',
      'High level trip, bin #/abnormal',
      'No high level trip, bin #',
    ),
    trio(
      'Sparks in duct #',
      'contact',
      'Spark sensor #@',
      'Spark at sensor #@/abnormal',
      'Spark trip, duct #/emergency',
      'No spark trip, duct #',
    ),
    trio(
      'Bearings of mill #',
      'contact',
      'Bearing sensor #@',
      'Bearing hot at sensor #@/abnormal',
      'Bearing trip, mill #/abnormal',
      'No bearing trip, mill #',
    ),
  ],
  startsLate: [
    delayed(
      'Bucket elevator #',
      'Elevator # called for',
      'Elevator # not called for',
      'Bucket elevator # runs',
      'Bucket elevator # stopped',
    ),
    delayed('Bin #', 'Bin # full', 'Bin # not full', 'Bin # alarm', 'No alarm at bin #', 'abnormal'),
    delayed(
      'Roller mill #',
      'Feed at mill #',
      'No feed at mill #',
      'Rolls of mill # engaged',
      'Rolls of mill # apart',
    ),
  ],
  runsOn: [
    delayed(
      'Screw conveyor #',
      'Mill # running',
      'Mill # stopped',
      'Screw conveyor # on',
      'Screw conveyor # off',
    ),
    delayed(
      'Filter fan #',
      'Elevator # running',
      'Elevator # stopped',
      'Filter fan # on',
      'Filter fan # off',
    ),
    delayed(
      'Shaker of filter #',
      'Dust filter # blocked',
      'Dust filter # clear',
      'Filter shaker # on',
      'Filter shaker # off',
    ),
  ],
};
