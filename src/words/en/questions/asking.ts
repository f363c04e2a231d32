/** Questions in words: what is shared by the kinds. What each kind asks is in the file of its name. */
import type { StatementOf } from '../../statement.ts';
import { say } from '../../statement.ts';
import { type ActSaid, acts, type FaultSaid, faults, type Named } from '../circuit.ts';
import { speech } from '../speech.ts';
import { capital } from '../text.ts';

const stands = (switches: readonly string[], how: string): string =>
  speech.plural(switches.length, {
    one: `${speech.and(switches)} is ${how}`,
    other: `${speech.and(switches)} are ${how}`,
  });

/** Which supplies are on, and whether they have come on this moment. */
interface SuppliesOn {
  readonly supplies: number;
  readonly justNow: boolean;
}
const on = ({ supplies, justNow }: SuppliesOn): string =>
  justNow
    ? speech.plural(supplies, {
        one: 'The supply has just been switched on',
        other: 'All supplies have just been switched on',
      })
    : speech.plural(supplies, { one: 'The supply is on', other: 'All supplies are on' });

/** Where in a scenario something is asked: after so many acts, the last of which was `act`; at the start without one. */
export interface Moment {
  readonly after: number;
  readonly act?: ActSaid;
}

export const moment = ({ after, act }: Moment): string =>
  act ? `after ${after} (${say(acts, act)})` : 'at the start';

export const labelled = ({ name, text }: Named): string => (text ? `${name} "${text}"` : name);

/** The starting state, the faults and what is done, sentence by sentence. */
export const situation = {
  asFound:
    'This is drawn as found: the words are what was meant, the wiring is what is. The two may differ, and it would have to be put right before it is used.',
  drawnAtRest: 'The drawing shows everything at rest.',
  beginsAtRest: 'The drawing shows everything at rest, and that is how it begins.',
  suppliesOn: (supplies: SuppliesOn): string => `${on(supplies)}.`,
  suppliesOnSwitchesOpen: ({ switches, ...supplies }: SuppliesOn & { switches: readonly string[] }): string =>
    `${on(supplies)}, but ${stands(switches, 'open')}.`,
  suppliesOnSwitchesClosed: ({
    switches,
    ...supplies
  }: SuppliesOn & { switches: readonly string[] }): string =>
    `${on(supplies)}, and ${stands(switches, 'closed')}.`,
  nothingPressed: 'Nothing is pressed.',
  noneActuated: 'No field contact is actuated.',
  nothingPressedNoneActuated: 'Nothing is pressed and no field contact is actuated.',
  fault: ({ fault }: { fault: FaultSaid }): string => `There is a fault: ${say(faults, fault)}.`,
  act: ({ act }: { act: ActSaid }): string => `Then this is done: ${say(acts, act)}.`,
  actsFollow: 'Then this is done, one after the other:',
  actInTurn: ({ number, act }: { number: number; act: ActSaid }): string =>
    `${number}. ${capital(say(acts, act))}.`,
};
export type SituationSaid = StatementOf<typeof situation>;

/** What one thing asked is called. */
export const labels = {
  item: (item: Named): string => labelled(item),
  itemAfter: ({ moment: at, item }: { moment: Moment; item: Named }): string =>
    `${moment(at)}: ${labelled(item)}`,
  against: ({ first, second }: { first: string; second: string }): string => `${first} against ${second}`,
  fromTo: ({ from, to }: { from: string; to: string }): string => `from ${from}, to ${to}`,
};
export type LabelSaid = StatementOf<typeof labels>;

/** What stands beside a question that touches measuring or isolating. Sources: HSG85 and GS38 (HSE). */
export const cautions = {
  noProof: 'This is an exercise on a drawing. What a drawing says never replaces proving dead on site.',
  isolating:
    'On site: identify every source, isolate, lock off and keep the key, prove the tester on a known source, test between all conductors and to earth, prove the tester again.',
  measuring:
    'Measuring on live equipment needs a reason, a safe way of doing it, and leads and a tester that are proved and fit for the voltage; where it can be done dead: isolate, lock off, prove dead with a proved tester.',
  stray:
    'Between two isolated supplies a meter of high resistance may show a stray voltage, or nothing where both points are live: measure each against its own return.',
  elsewhere: 'Conductors fed from another supply stay live when this one is off.',
  local: 'Follow the local code; work of this kind is for licensed people or under their supervision.',
};
export type CautionSaid = StatementOf<typeof cautions>;
