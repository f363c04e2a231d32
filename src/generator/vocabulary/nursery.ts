/** Growing plants under glass: vents, fans, screens, irrigation, potting. */
import { chain, condition, delayed, movement, signal, trio } from './entries.ts';
import type { Plant } from './types.ts';

export const nursery: Plant = {
  id: 'nursery',
  name: 'Nursery',
  signals: [
    signal('Vent fan #', 'contact', 'Vent fan # tripped/abnormal', 'Vent fan # healthy/normal'),
    signal('Vent fan #', 'contact', 'Vent fan # running/normal', 'Vent fan # stopped/neutral'),
    signal('Roof vent #', 'limit', 'Roof vent # open/neutral', 'Roof vent # not open/neutral'),
    signal('Roof vent #', 'limit', 'Roof vent # closed/normal', 'Roof vent # not closed/abnormal'),
    signal('Shade screen #', 'limit', 'Shade screen # drawn/neutral', 'Shade screen # not drawn/neutral'),
    signal('Misting pump #', 'contact', 'Misting pump # tripped/abnormal', 'Misting pump # healthy/normal'),
    signal('Water tank #', 'float', 'Water tank # full/normal', 'Water tank # not full/neutral'),
    signal(
      'Water tank #',
      'float',
      'Water tank # overflowing/emergency',
      'Water tank # below overflow/normal',
    ),
    signal('Feed mixer #', 'contact', 'Feed mixer # faulty/abnormal', 'Feed mixer # ready/normal'),
    signal('Shed door #', 'limit', 'Shed door # open/abnormal', 'Shed door # closed/normal'),
    signal('Bay #', 'contact', 'Frost in bay #/emergency', 'No frost in bay #/normal'),
    signal('Water filter #', 'contact', 'Water filter # choked/abnormal', 'Water filter # clear/normal'),
  ],
  drives: [
    { thing: 'Vent fan #', running: 'running', startsUnloaded: true },
    { thing: 'Misting pump #', running: 'running' },
    { thing: 'Feed mixer #', running: 'mixing', jogs: true },
    { thing: 'Potting line #', running: 'running', jogs: true },
    { thing: 'Tray washer #', running: 'washing', jogs: true },
  ],
  twoHand: [
    { thing: 'Pot press #', running: 'pressing' },
    { thing: 'Tray clamp #', running: 'clamping' },
  ],
  movements: [
    movement(
      'Roof vent #',
      ['Open roof vent #', 'Roof vent # opening', 'Roof vent # open'],
      ['Close roof vent #', 'Roof vent # closing', 'Roof vent # closed'],
    ),
    movement(
      'Shade screen #',
      ['Draw shade screen #', 'Shade screen # drawing', 'Shade screen # drawn'],
      ['Fold shade screen #', 'Shade screen # folding', 'Shade screen # folded'],
    ),
    movement(
      'Bench lift #',
      ['Raise bench lift #', 'Bench lift # rising', 'Bench lift # at top'],
      ['Lower bench lift #', 'Bench lift # lowering', 'Bench lift # at bottom'],
    ),
    movement(
      'Spray boom #',
      ['Spray boom # forward', 'Spray boom # going forward', 'Spray boom # at far end'],
      ['Spray boom # back', 'Spray boom # going back', 'Spray boom # at near end'],
    ),
  ],
  pairs: [
    {
      thing: 'Irrigation pumps',
      units: ['Irrigation pump A', 'Irrigation pump B'],
      demand: 'Beds dry',
      none: 'No irrigation pump running',
    },
    {
      thing: 'Vent fans',
      units: ['North fan', 'South fan'],
      demand: 'Bays warm',
      none: 'No vent fan running',
    },
  ],
  sumps: [
    { thing: 'Drain pit #', pump: 'Drain pump #' },
    { thing: 'Run-off sump #', pump: 'Run-off pump #' },
  ],
  chains: [
    chain('Spray boom #', [
      condition('Bay door shut', 'limit', 'acted'),
      condition('Spray pressure present', 'contact', 'acted', 'passable'),
      condition('Tank not empty', 'float', 'acted', 'passable'),
      condition('Boom not at end', 'limit', 'rest'),
      condition('Wind not high', 'contact', 'rest'),
      condition('Spray pump not tripped', 'contact', 'rest'),
      condition('Rail clear', 'limit', 'rest'),
    ]),
    chain('Tray washer #', [
      condition('Hood down', 'limit', 'acted'),
      condition('Water not low', 'float', 'acted'),
      condition('Pump not tripped', 'contact', 'rest'),
      condition('Outfeed not full', 'limit', 'rest', 'passable'),
      condition('Drain not blocked', 'float', 'rest'),
      condition('Air pressure present', 'contact', 'acted'),
    ]),
  ],
  trios: [
    trio(
      'Frost in bay #',
      'contact',
      'Frost sensor #@',
      'Frost at sensor #@/abnormal',
      'Frost trip in bay #/emergency',
      'No frost trip in bay #',
    ),
    trio(
      'Overflow of water tank #',
      'float',
      'Overflow float #@',
      'Overflow at float #@/abnormal',
      'Overflow trip of tank #/emergency',
      'No overflow trip of tank #',
    ),
    trio(
      'Humidity in bay #',
      'contact',
      'Humidity switch #@',
      'Too damp at switch #@/abnormal',
      'Humidity trip in bay #/abnormal',
      'No humidity trip in bay #',
    ),
  ],
  startsLate: [
    delayed(
      'Roof vent #',
      'Rain at vent #',
      'No rain at vent #',
      'Roof vent # closes',
      'Roof vent # stays open',
    ),
    delayed('Vent fan #', 'Bay # warm', 'Bay # cool', 'Vent fan # runs', 'Vent fan # off'),
    delayed(
      'Potting line #',
      'Line # called for',
      'Line # not called for',
      'Potting line # runs',
      'Potting line # stopped',
    ),
  ],
  runsOn: [
    delayed('Vent fan #', 'Bay # damp', 'Bay # dry', 'Vent fan # on', 'Vent fan # off'),
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
