/** Contacts, and why a place is open, as an electrician says them. */
import { type StatementOf, say } from '../../statement.ts';
import { type FaultSaid, faults } from '../circuit.ts';
import { speech } from '../speech.ts';

/** Through a device from one terminal to another; a stop without a way through has no `leave`. */
export interface Hop {
  readonly device: string;
  readonly enter: string;
  readonly leave?: string;
}

/** `-K3:11-14`; a stop without a way through `A:L`. */
export const hop = ({ device, enter, leave }: Hop): string =>
  leave === undefined ? `${device}:${enter}` : `${device}:${enter}-${leave}`;

interface Device {
  readonly device: string;
}

/** How what moves a contact stands. */
export const positions = {
  pressed: ({ device }: Device): string => `${device} is pressed`,
  notPressed: ({ device }: Device): string => `${device} is not pressed`,
  standsAt: ({ device, at }: Device & { at: string }): string => `${device} stands at ${at}`,
  actuated: ({ device }: Device): string => `${device} is actuated`,
  notActuated: ({ device }: Device): string => `${device} is not actuated`,
  tripped: ({ device }: Device): string => `${device} has tripped`,
  notTripped: ({ device }: Device): string => `${device} has not tripped`,
  outputOn: ({ device }: Device): string => `the output ${device} is on`,
  outputOff: ({ device }: Device): string => `the output ${device} is off`,
  blown: ({ device }: Device): string => `${device} is blown or taken out`,
  whole: ({ device }: Device): string => `${device} is whole`,
  open: ({ device }: Device): string => `${device} is open`,
  closed: ({ device }: Device): string => `${device} is closed`,
  operated: ({ device }: Device): string => `${device} has operated`,
  notOperated: ({ device }: Device): string => `${device} has not operated`,
};
export type PositionSaid = StatementOf<typeof positions>;

interface Contact {
  readonly contact: Hop;
}

/** Why one place is open, or closed. */
export const places = {
  supplyOff: ({ supply }: { supply: string }): string => `supply ${supply} is off`,
  fault: ({ fault }: { fault: FaultSaid }): string => say(faults, fault),
  conductorOff: ({ at }: { at: string }): string => `the conductor at ${at} is off`,
  neverCloses: ({ contact }: Contact): string => `${hop(contact)} never closes because of the fault`,
  neverClosesBecause: ({ contact, fault }: Contact & { fault: FaultSaid }): string =>
    `${hop(contact)} never closes, because ${say(faults, fault)}`,
  travelling: ({ contact }: Contact): string =>
    `${hop(contact)} is open because ${contact.device} is on its way`,
  open: ({ contact }: Contact): string => `${hop(contact)} is open`,
  openBecause: ({ contact, position }: Contact & { position: PositionSaid }): string =>
    `${hop(contact)} is open because ${say(positions, position)}`,
  closed: ({ contact, position }: Contact & { position: PositionSaid }): string =>
    `${hop(contact)} is closed: ${say(positions, position)}`,
  closedWelded: ({ contact }: Contact): string => `${hop(contact)} is welded and stays closed`,
  closedDirty: ({ contact }: Contact): string =>
    `${hop(contact)} is closed but dirty: its resistance is far above that of the load behind it`,
};
export type PlaceSaid = StatementOf<typeof places>;
export type Places = readonly PlaceSaid[];

type Open = Extract<PlaceSaid, { says: 'open' | 'openBecause' }>;
const isOpen = (place: PlaceSaid): place is Open => place.says === 'open' || place.says === 'openBecause';

const reasonOf = (place: Open): string =>
  place.says === 'open' ? '' : ` because ${say(positions, place.position)}`;

/** Contacts that are open for the same reason, told together. */
function together(all: readonly Open[]): string {
  const contacts = speech.and(all.map(({ contact }) => hop(contact)));
  return `${contacts} ${speech.plural(all.length, { one: 'is', other: 'are' })} open${reasonOf(all[0]!)}`;
}

/** Several open places, each with its reason; those that are open for the same reason together. */
export function placesOpen(all: Places): string {
  const groups: PlaceSaid[][] = [];
  for (const place of all) {
    const last = groups.at(-1)?.[0];
    if (last && isOpen(last) && isOpen(place) && reasonOf(last) === reasonOf(place))
      groups.at(-1)!.push(place);
    else groups.push([place]);
  }
  const words = groups.map((group) => (group.every(isOpen) ? together(group) : say(places, group[0]!)));
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')}, and ${last}`;
}

/** Open places further on, without their reasons: `-K2:11-14 and -S1:13-14 are open too`. */
function openToo(all: Places): string {
  const contacts = all.flatMap((place) => ('contact' in place ? [hop(place.contact)] : []));
  const others = all.flatMap((place) => ('contact' in place ? [] : [`${say(places, place)} too`]));
  const too =
    contacts.length > 0
      ? [`${speech.and(contacts)} ${speech.plural(contacts.length, { one: 'is', other: 'are' })} open too`]
      : [];
  return speech.and([...too, ...others]);
}

/** What is open, and what besides. */
export const openOneByOne = (open: Places, besides: Places = []): string =>
  besides.length > 0 ? `${placesOpen(open)}; ${openToo(besides)}` : placesOpen(open);
