/** Growing plants under glass: vents, fans, screens, irrigation, potting. */
import { condition, delayed, movement, signal, trio } from './entries.ts';
import type { Plant } from './types.ts';

export const nursery: Plant = {
  id: 'nursery',
  name: 'Nursery',
  signals: [
    signal('Vent fan #', 'contact', 'tripped/abnormal', 'healthy/normal'),
    signal('Vent fan #', 'contact', 'running/normal', 'standing/neutral'),
    signal('Roof vent #', 'limit', 'open/neutral', 'not open/neutral'),
    signal('Roof vent #', 'limit', 'closed/normal', 'not closed/abnormal'),
    signal('Shade screen #', 'limit', 'drawn/neutral', 'folded/neutral'),
    signal('Misting pump #', 'contact', 'tripped/abnormal', 'healthy/normal'),
    signal('Water tank #', 'float', 'full/normal', 'not full/neutral'),
    signal('Water tank #', 'float', 'overflow/emergency', 'level normal/normal'),
    signal('Feed mixer #', 'contact', 'fault/abnormal', 'ready/normal'),
    signal('Packing shed door #', 'limit', 'open/abnormal', 'closed/normal'),
    signal('Frost guard #', 'contact', 'frost/emergency', 'above frost/normal'),
    signal('Filter #', 'contact', 'choked/abnormal', 'clear/normal'),
  ],
  drives: [
    { thing: 'Vent fan #', running: 'running', startsUnloaded: true },
    { thing: 'Misting pump #', running: 'misting' },
    { thing: 'Feed mixer #', running: 'mixing' },
    { thing: 'Potting line #', running: 'running' },
    { thing: 'Tray washer #', running: 'washing' },
  ],
  twoHand: [
    { thing: 'Pot press #', running: 'pressing' },
    { thing: 'Tray clamp #', running: 'clamping' },
  ],
  movements: [
    movement('Roof vent #', ['Open', 'opening', 'open'], ['Close', 'closing', 'closed']),
    movement('Shade screen #', ['Draw', 'drawing', 'drawn'], ['Fold', 'folding', 'folded']),
    movement('Bench lift #', ['Raise', 'rising', 'up'], ['Lower', 'sinking', 'down']),
    movement(
      'Spray boom #',
      ['Forward', 'going forward', 'at far end'],
      ['Back', 'going back', 'at near end'],
    ),
  ],
  pairs: [
    { thing: 'Irrigation pumps', units: ['Irrigation pump A', 'Irrigation pump B'] },
    { thing: 'Vent fans', units: ['North fan', 'South fan'] },
  ],
  sumps: [
    { thing: 'Drain pit #', pump: 'Drain pump #' },
    { thing: 'Run-off sump #', pump: 'Run-off pump #' },
  ],
  chains: [
    {
      thing: 'Spray boom #',
      conditions: [
        condition('Bay door shut', 'limit', 'acted'),
        condition('Spray pressure present', 'contact', 'acted', 'passable'),
        condition('Tank not empty', 'float', 'acted', 'passable'),
        condition('Boom not at end', 'limit', 'rest'),
        condition('Wind not high', 'contact', 'rest'),
        condition('Spray pump not tripped', 'contact', 'rest'),
        condition('Rail clear', 'limit', 'rest'),
      ],
    },
    {
      thing: 'Tray washer #',
      conditions: [
        condition('Hood down', 'limit', 'acted'),
        condition('Water not low', 'float', 'acted'),
        condition('Pump not tripped', 'contact', 'rest'),
        condition('Outfeed not full', 'limit', 'rest', 'passable'),
        condition('Drain not blocked', 'float', 'rest'),
        condition('Air pressure present', 'contact', 'acted'),
      ],
    },
  ],
  trios: [
    trio('Bay # frost guard', 'contact', 'Frost', 'emergency'),
    trio('Water tank # level', 'float', 'Tank overflow', 'abnormal'),
    trio('Bay # humidity', 'contact', 'Too damp', 'abnormal'),
  ],
  startsLate: [
    delayed('Roof vent #', 'Rain seen', 'Dry', 'Roof vent # closes'),
    delayed('Vent fan #', 'Bay warm', 'Bay cool', 'Vent fan # runs'),
    delayed('Potting line #', 'Line called', 'Line not called', 'Potting line # runs'),
  ],
  runsOn: [
    delayed('Vent fan #', 'Damp in bay', 'Bay dry', 'Vent fan # runs on'),
    delayed('Filter # flush', 'Filter choked', 'Filter clear', 'Filter # flush valve open'),
    delayed('Packing shed lights', 'Door open', 'Door shut', 'Packing shed lights on'),
  ],
};
