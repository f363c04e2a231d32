/** Making and storing ice: compressors, brine, crushers, cold stores. */
import { condition, delayed, movement, signal, trio } from './entries.ts';
import type { Plant } from './types.ts';

export const iceWorks: Plant = {
  id: 'ice-works',
  name: 'Ice works',
  signals: [
    signal('Compressor #', 'contact', 'tripped/abnormal', 'healthy/normal'),
    signal('Compressor #', 'contact', 'running/normal', 'standing/neutral'),
    signal('Brine pump #', 'contact', 'flow/normal', 'no flow/abnormal'),
    signal('Brine pump #', 'contact', 'tripped/abnormal', 'healthy/normal'),
    signal('Ice crusher #', 'contact', 'jammed/abnormal', 'free/normal'),
    signal('Crusher hood #', 'limit', 'shut/normal', 'open/abnormal'),
    signal('Store door #', 'limit', 'open/abnormal', 'shut/normal'),
    signal('Harvest tank #', 'float', 'full/normal', 'filling/neutral'),
    signal('Suction trap #', 'float', 'liquid high/emergency', 'liquid normal/normal'),
    signal('Plant room', 'contact', 'gas found/emergency', 'free of gas/normal'),
    signal('Oil heater #', 'contact', 'fault/abnormal', 'ready/normal'),
    signal('Ice bin #', 'limit', 'full/neutral', 'not full/neutral'),
  ],
  drives: [
    { thing: 'Compressor #', running: 'running', startsUnloaded: true },
    { thing: 'Brine pump #', running: 'pumping', startsUnloaded: true },
    { thing: 'Ice crusher #', running: 'crushing' },
    { thing: 'Block saw #', running: 'cutting', startsUnloaded: true },
    { thing: 'Store conveyor #', running: 'running' },
  ],
  twoHand: [
    { thing: 'Block guillotine #', running: 'cutting' },
    { thing: 'Flake press #', running: 'pressing' },
  ],
  movements: [
    movement('Block crane #', ['Raise', 'raising', 'up'], ['Lower', 'lowering', 'down']),
    movement('Store door #', ['Open', 'opening', 'open'], ['Shut', 'shutting', 'shut']),
    movement('Tipper #', ['Tip', 'tipping', 'tipped'], ['Return', 'returning', 'level']),
  ],
  pairs: [
    { thing: 'Brine pumps', units: ['Brine pump A', 'Brine pump B'] },
    { thing: 'Condenser fans', units: ['Condenser fan A', 'Condenser fan B'] },
  ],
  sumps: [
    { thing: 'Melt sump #', pump: 'Melt pump #' },
    { thing: 'Condenser pit #', pump: 'Pit pump #' },
  ],
  chains: [
    {
      thing: 'Compressor #',
      conditions: [
        condition('Discharge pressure not high', 'contact', 'rest'),
        condition('Suction pressure not low', 'contact', 'acted', 'passable'),
        condition('Oil pressure present', 'contact', 'acted'),
        condition('Brine flowing', 'contact', 'acted'),
        condition('Trap level not high', 'float', 'rest'),
        condition('Motor not hot', 'contact', 'rest'),
        condition('Guard shut', 'limit', 'acted'),
      ],
    },
    {
      thing: 'Ice crusher #',
      conditions: [
        condition('Hood shut', 'limit', 'acted'),
        condition('Chute not full', 'limit', 'rest', 'passable'),
        condition('Drive not tripped', 'contact', 'rest'),
        condition('Conveyor running', 'contact', 'acted'),
        condition('Crusher not jammed', 'contact', 'rest'),
        condition('Bin not full', 'limit', 'rest', 'passable'),
      ],
    },
  ],
  trios: [
    trio('Plant room # gas', 'contact', 'Gas found', 'emergency'),
    trio('Suction trap # level', 'float', 'Liquid high', 'emergency'),
    trio('Brine # freezing guard', 'contact', 'Brine too cold', 'abnormal'),
  ],
  startsLate: [
    delayed('Compressor #', 'Cold called', 'Cold not called', 'Compressor # runs'),
    delayed('Brine # flow guard', 'Flow lost', 'Flow present', 'Brine # flow alarm', 'abnormal'),
    delayed('Store door #', 'Door open', 'Door shut', 'Store door # alarm', 'abnormal'),
  ],
  runsOn: [
    delayed('Brine pump #', 'Compressor running', 'Compressor standing', 'Brine pump # runs on'),
    delayed('Condenser fan #', 'Pressure high', 'Pressure normal', 'Condenser fan # runs on'),
    delayed('Crusher chute #', 'Crusher running', 'Crusher standing', 'Crusher chute # conveyor runs on'),
  ],
};
