/** Making and storing ice: compressors, brine, crushers, cold stores. */
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

export const iceWorks: Plant = {
  id: 'ice-works',
  name: 'Ice works',
  signals: [
    signal('Compressor #', 'contact', '~ tripped/abnormal', '~ healthy/normal'),
    signal('Compressor #', 'contact', '~ running/normal', '~ stopped/neutral'),
    signal('Brine circuit #', 'contact', 'Brine # flowing/normal', 'Brine # not flowing/abnormal'),
    signal('Brine pump #', 'contact', '~ tripped/abnormal', '~ healthy/normal'),
    signal('Ice crusher #', 'contact', '~ jammed/abnormal', '~ not jammed/normal'),
    signal('Crusher hood #', 'limit', '~ shut/normal', '~ not shut/abnormal'),
    signal('Store door #', 'limit', '~ open/abnormal', '~ shut/normal'),
    signal('Harvest tank #', 'float', '~ full/normal', '~ not full/neutral'),
    signal('Suction trap #', 'float', '~ level high/emergency', '~ level not high/normal'),
    signal('Brine tank #', 'float', '~ low/abnormal', '~ not low/normal'),
    signal('Oil heater #', 'contact', '~ faulty/abnormal', '~ ready/normal'),
    signal('Ice bin #', 'limit', '~ full/neutral', '~ not full/neutral'),
  ],
  drives: [
    drive('Compressor #', 'running', { startsUnloaded: true }),
    drive('Brine pump #', 'pumping', { startsUnloaded: true }),
    drive('Ice crusher #', 'crushing', { jogs: true }),
    drive('Block saw #', 'cutting', { startsUnloaded: true }),
    drive('Store conveyor #', 'running', { jogs: true }),
  ],
  twoHand: [drive('Block guillotine #', 'cutting'), drive('Flake press #', 'pressing')],
  movements: [
    turning('Ice crusher #', ['~ forward', '~ turning forward'], ['~ back', '~ turning back']),
    turning('Store conveyor #', ['~ to store', '~ running to store'], ['~ to quay', '~ running to quay']),
    movement('Store door #', ['Open ~', '~ opening', '~ open'], ['Shut ~', '~ shutting', '~ shut']),
    movement(
      'Harvest rake #',
      ['Run out ~', '~ running out', '~ out'],
      ['Draw in ~', '~ drawing in', '~ in'],
    ),
    lifting('Block crane #', ['Raise ~', '~ rising', '~ at top'], ['Lower ~', '~ lowering', '~ at bottom']),
    lifting('Ice skip #', ['Tip ~', '~ tipping', '~ tipped'], ['Return ~', '~ returning', '~ level']),
  ],
  pairs: [
    {
      thing: 'Brine pumps',
      units: ['Brine pump A', 'Brine pump B'],
      demand: 'Store warm',
    },
    {
      thing: 'Condenser fans',
      units: ['Condenser fan A', 'Condenser fan B'],
      demand: 'Condenser pressure high',
    },
  ],
  sumps: [
    { thing: 'Melt sump #', pump: 'Melt pump #' },
    { thing: 'Condenser pit #', pump: 'Pit pump #' },
  ],
  chains: [
    chain('Compressor #', [
      absence('Discharge pressure not high', 'Discharge pressure high', 'contact'),
      condition('Suction pressure not low', 'contact'),
      condition('Oil pressure present', 'contact'),
      condition('Brine flowing', 'contact'),
      absence('Trap level not high', 'Trap level high', 'float'),
      absence('Motor not hot', 'Motor hot', 'contact'),
      condition('Guard shut', 'limit'),
    ]),
    chain('Ice crusher #', [
      condition('Hood shut', 'limit'),
      absence('Chute not full', 'Chute full', 'limit', 'passable'),
      absence('Drive not tripped', 'Drive tripped', 'contact'),
      condition('Conveyor running', 'contact', 'passable'),
      absence('Crusher not jammed', 'Crusher jammed', 'contact'),
      absence('Bin not full', 'Bin full', 'limit', 'passable'),
    ]),
  ],
  trios: [
    trio(
      'Temperature in store #',
      'contact',
      'Store thermostat #@',
      'High temperature trip, store #/abnormal',
    ),
    trio('Level in suction trap #', 'float', 'Trap float #@', 'High level trip, suction trap #/emergency'),
    trio('Freezing of brine circuit #', 'contact', 'Brine thermostat #@', 'Freezing trip, brine #/abnormal'),
  ],
  startsLate: [
    delayed('Compressor #', 'Store # warm', 'Store # cold', '~ runs', '~ off'),
    delayed(
      'Brine circuit #',
      'Brine # not flowing',
      'Brine # flowing',
      'Brine # flow lost',
      'Brine # flow well',
      'abnormal',
    ),
    delayed('Store door #', '~ open', '~ shut', '~ alarm', 'No alarm at ~', 'abnormal'),
  ],
  runsOn: [
    delayed('Brine pump #', 'Compressor # running', 'Compressor # stopped', '~ on', '~ off'),
    delayed(
      'Condenser fan #',
      'Pressure high at condenser #',
      'Pressure normal at condenser #',
      '~ on',
      '~ off',
    ),
    delayed(
      'Conveyor of crusher #',
      'Ice crusher # running',
      'Ice crusher # stopped',
      'Crusher conveyor # on',
      'Crusher conveyor # off',
    ),
  ],
};
