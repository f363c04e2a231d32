/** Growing plants under glass: vents, fans, screens, irrigation, potting. */
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

export const nursery: Plant = {
  id: 'nursery',
  name: 'Nursery',
  signals: [
    signal('Vent fan #', 'contact', '~ tripped/abnormal', '~ healthy/normal'),
    signal('Vent fan #', 'contact', '~ running/normal', '~ stopped/neutral'),
    signal('Roof vent #', 'limit', '~ open/neutral', '~ not open/neutral'),
    signal('Roof vent #', 'limit', '~ closed/normal', '~ not closed/abnormal'),
    signal('Shade screen #', 'limit', '~ drawn/neutral', '~ not drawn/neutral'),
    signal('Misting pump #', 'contact', '~ tripped/abnormal', '~ healthy/normal'),
    signal('Water tank #', 'float', '~ full/normal', '~ not full/neutral'),
    signal('Water tank #', 'float', '~ overflowing/emergency', '~ below overflow/normal'),
    signal('Feed mixer #', 'contact', '~ faulty/abnormal', '~ ready/normal'),
    signal('Shed door #', 'limit', '~ open/abnormal', '~ closed/normal'),
    signal('Bay #', 'contact', 'Frost in ~/emergency', 'No frost in ~/normal'),
    signal('Water filter #', 'contact', '~ choked/abnormal', '~ clear/normal'),
  ],
  drives: [
    drive('Vent fan #', 'running', { startsUnloaded: true }),
    drive('Misting pump #', 'running'),
    drive('Feed mixer #', 'mixing', { jogs: true }),
    drive('Potting line #', 'running', { jogs: true }),
    drive('Tray washer #', 'washing', { jogs: true }),
  ],
  twoHand: [drive('Pot press #', 'pressing'), drive('Tray clamp #', 'clamping')],
  movements: [
    movement('Roof vent #', ['Open ~', '~ opening', '~ open'], ['Close ~', '~ closing', '~ closed']),
    movement('Shade screen #', ['Draw ~', '~ drawing', '~ drawn'], ['Fold ~', '~ folding', '~ folded']),
    turning('Vent fan #', ['~ inwards', '~ blowing in'], ['~ outwards', '~ blowing out']),
    turning('Potting belt #', ['~ forward', '~ running forward'], ['~ back', '~ running back']),
    lifting('Bench lift #', ['Raise ~', '~ rising', '~ at top'], ['Lower ~', '~ lowering', '~ at bottom']),
    movement(
      'Spray boom #',
      ['~ forward', '~ going forward', '~ at far end'],
      ['~ back', '~ going back', '~ at near end'],
    ),
  ],
  pairs: [
    {
      thing: 'Irrigation pumps',
      units: ['Irrigation pump A', 'Irrigation pump B'],
      demand: 'Beds dry',
    },
    {
      thing: 'Vent fans',
      units: ['North fan', 'South fan'],
      demand: 'Bays warm',
    },
  ],
  sumps: [
    { thing: 'Drain pit #', pump: 'Drain pump #' },
    { thing: 'Run-off sump #', pump: 'Run-off pump #' },
  ],
  chains: [
    chain('Spray boom #', [
      condition('Bay door shut', 'limit'),
      condition('Spray pressure present', 'contact', 'passable'),
      condition('Tank not empty', 'float', 'passable'),
      absence('Boom not at end', 'Boom at end', 'limit'),
      absence('Wind not high', 'Wind high', 'contact'),
      absence('Spray pump not tripped', 'Spray pump tripped', 'contact'),
      absence('Rail clear', 'Rail obstructed', 'limit'),
    ]),
    chain('Tray washer #', [
      condition('Hood down', 'limit'),
      condition('Water not low', 'float'),
      absence('Pump not tripped', 'Pump tripped', 'contact'),
      absence('Outfeed not full', 'Outfeed full', 'limit', 'passable'),
      absence('Drain not blocked', 'Drain blocked', 'float'),
      condition('Air pressure present', 'contact'),
    ]),
  ],
  trios: [
    trio('Frost in bay #', 'contact', 'Frost sensor #@', 'Frost trip in bay #/emergency'),
    trio('Overflow of water tank #', 'float', 'Overflow float #@', 'Overflow trip of tank #/emergency'),
    trio('Humidity in bay #', 'contact', 'Humidity switch #@', 'Humidity trip in bay #/abnormal'),
  ],
  startsLate: [
    delayed('Roof vent #', 'Rain at vent #', 'No rain at vent #', '~ closes', '~ stays open'),
    delayed('Vent fan #', 'Bay # warm', 'Bay # cool', '~ runs', '~ off'),
    delayed('Potting line #', 'Line # called for', 'Line # not called for', '~ runs', '~ stopped'),
  ],
  runsOn: [
    delayed('Vent fan #', 'Bay # damp', 'Bay # dry', '~ on', '~ off'),
    delayed(
      'Flush of water filter #',
      'Water filter # choked',
      'Water filter # clear',
      'Flush valve # open',
      'Flush valve # shut',
    ),
    delayed(
      'Shed lights',
      'Shed door # open',
      'Shed door # closed',
      'Shed lights on',
      'Shed lights off',
      'neutral',
    ),
  ],
};
