/** Milling: elevators, screws, sifters, bins, filters. */
import { condition, delayed, movement, signal, trio } from './entries.ts';
import type { Plant } from './types.ts';

export const flourLine: Plant = {
  id: 'flour-line',
  name: 'Flour line',
  signals: [
    signal('Bucket elevator #', 'contact', 'tripped/abnormal', 'healthy/normal'),
    signal('Bucket elevator #', 'contact', 'running/normal', 'standing/neutral'),
    signal('Elevator belt #', 'limit', 'off track/emergency', 'on track/normal'),
    signal('Screw conveyor #', 'contact', 'choked/abnormal', 'clear/normal'),
    signal('Bin #', 'contact', 'full/normal', 'not full/neutral'),
    signal('Bin #', 'contact', 'empty/abnormal', 'not empty/normal'),
    signal('Slide #', 'limit', 'open/neutral', 'not open/neutral'),
    signal('Sifter #', 'contact', 'tripped/abnormal', 'healthy/normal'),
    signal('Dust filter #', 'contact', 'blocked/abnormal', 'clear/normal'),
    signal('Air lock #', 'contact', 'turning/normal', 'standing/abnormal'),
    signal('Spark finder #', 'contact', 'spark/emergency', 'no spark/normal'),
    signal('Damping water #', 'float', 'low/mandatory', 'sufficient/normal'),
  ],
  drives: [
    { thing: 'Bucket elevator #', running: 'running' },
    { thing: 'Screw conveyor #', running: 'running' },
    { thing: 'Roller mill #', running: 'grinding', startsUnloaded: true },
    { thing: 'Sifter #', running: 'sifting' },
    { thing: 'Filter fan #', running: 'running', startsUnloaded: true },
  ],
  twoHand: [
    { thing: 'Sack press #', running: 'pressing' },
    { thing: 'Bale clamp #', running: 'clamping' },
  ],
  movements: [
    movement('Slide #', ['Open', 'opening', 'open'], ['Shut', 'shutting', 'shut']),
    movement(
      'Shuttle belt #',
      ['Left', 'going left', 'at left end'],
      ['Right', 'going right', 'at right end'],
    ),
    movement('Sack lift #', ['Up', 'going up', 'at top'], ['Down', 'going down', 'at bottom']),
  ],
  pairs: [
    { thing: 'Blowers', units: ['Blower A', 'Blower B'] },
    { thing: 'Filter fans', units: ['East filter fan', 'West filter fan'] },
  ],
  sumps: [
    { thing: 'Wash pit #', pump: 'Wash pump #' },
    { thing: 'Elevator pit #', pump: 'Pit pump #' },
  ],
  chains: [
    {
      thing: 'Roller mill #',
      conditions: [
        condition('Elevator running', 'contact', 'acted'),
        condition('Filter fan running', 'contact', 'acted'),
        condition('Guard shut', 'limit', 'acted'),
        condition('Bin below not full', 'contact', 'rest', 'passable'),
        condition('Bearing not hot', 'contact', 'rest'),
        condition('No spark', 'contact', 'rest'),
        condition('Roll gap set', 'limit', 'acted'),
      ],
    },
    {
      thing: 'Bucket elevator #',
      conditions: [
        condition('Belt on track', 'limit', 'rest'),
        condition('Boot not choked', 'contact', 'rest'),
        condition('Drive not tripped', 'contact', 'rest'),
        condition('Screw below running', 'contact', 'acted', 'passable'),
        condition('Hatch shut', 'limit', 'acted'),
        condition('Brake lifted', 'limit', 'acted'),
      ],
    },
  ],
  trios: [
    trio('Bin # level', 'contact', 'Bin full', 'abnormal'),
    trio('Spark duct #', 'contact', 'Spark', 'emergency'),
    trio('Mill # bearing guard', 'contact', 'Bearing hot', 'abnormal'),
  ],
  startsLate: [
    delayed('Bucket elevator #', 'Start called', 'Start not called', 'Bucket elevator # runs'),
    delayed('Bin #', 'Bin full', 'Bin not full', 'Bin # alarm', 'abnormal'),
    delayed('Roller mill #', 'Feed present', 'No feed', 'Roller mill # rolls close'),
  ],
  runsOn: [
    delayed('Screw conveyor #', 'Mill running', 'Mill standing', 'Screw conveyor # runs on'),
    delayed('Filter fan #', 'Elevator running', 'Elevator standing', 'Filter fan # runs on'),
    delayed('Filter # shaker', 'Filter blocked', 'Filter clear', 'Filter # shaker on'),
  ],
};
