/** What is written at each part: name and texts to its left, and below the return pole what belongs to a load. */
import { type Lettering, say } from '../../words/index.ts';
import { drawnAs } from '../devices/registry.ts';
import { isLoad, isPolyphase, type Part, plansOf } from '../parts/index.ts';
import type { TextRole } from '../scene/types.ts';
import type { DrawnPlaces } from './places.ts';
import type { Body, Profile } from './profile.ts';
import { wrapNarrow, wrapText } from './wrap.ts';

export interface Line {
  readonly text: string;
  readonly role: TextRole;
  readonly width: number;
}

export interface Label {
  readonly lines: readonly Line[];
  readonly width: number;
  readonly height: number;
}

export interface PartLabels {
  /** Beside the symbol. */
  readonly beside: Label;
  /** Below the return pole. */
  readonly band: Label;
  /** The symbol's own size, and by spot how wide its terminal's number is. */
  readonly body: Body;
  readonly numbers: readonly number[];
}

type Writing = Pick<Line, 'text' | 'role'>;

const isCoilDevice = (places: DrawnPlaces, part: Part): boolean =>
  part.mechanism !== undefined && places.coilOf.has(part.mechanism) && part.form !== 'coil';

/** One line a contact: the terminals that are wired and where; and what is free, pole by pole. */
export function contactList(
  places: DrawnPlaces,
  coil: Part,
): { readonly wired: string[]; readonly free: string[] } {
  const { drawn, contactsOf, placeOfRun, coilOf } = places;
  if (!coil.mechanism || coilOf.get(coil.mechanism) !== coil) return { wired: [], free: [] };
  const plans = plansOf(coil.device);
  const rank = ({ spots }: Part): number =>
    plans.findIndex((plan) => plan.spots[0]?.terminal === spots[0]?.terminal);
  const parts = [...(contactsOf.get(coil.mechanism) ?? [])].sort((a, b) => rank(a) - rank(b));
  const wired = parts.map((part) => {
    const terminals = part.spots.map((spot) => spot.terminal).join('-');
    return `${terminals} ${placeOfRun(drawn.runOfPart[part.index] as number)}`;
  });
  const taken = new Set(parts.flatMap((part) => part.spots.map((spot) => spot.terminal)));
  const free = plans
    .filter(({ form, mechanism }) => form !== 'coil' && mechanism === coil.mechanism)
    .map(({ spots }) => spots.map(({ terminal }) => terminal).filter((terminal) => !taken.has(terminal)));
  return { wired, free: free.filter((pole) => pole.length > 0).map((pole) => pole.join('-')) };
}

export function labelsOf(
  { lettering }: Lettering,
  places: DrawnPlaces,
  profile: Profile,
  rename: (designation: string) => string,
): (part: Part, lastOfRun: boolean) => PartLabels {
  const label = (writing: readonly Writing[]): Label => {
    let [width, height] = [0, 0];
    const lines = writing.map(({ text, role }) => {
      const line = { text, role, width: profile.measure(text, role) };
      width = Math.max(width, line.width);
      height += profile.lineHeight(role);
      return line;
    });
    return { lines, width, height };
  };
  const wrapped = (text: string): Writing[] =>
    wrapNarrow(text, profile.wraps, profile.wrapLines, (line) => profile.measure(line, 'text')).map(
      (line) => ({ text: line, role: 'text' }),
    );
  const bandList = (part: Part): Writing[] => {
    if (part.form !== 'coil') return [];
    const { wired, free } = contactList(places, part);
    const measure = (text: string): number => profile.measure(text, 'list');
    const room = Math.max(measure(lettering.free('11-12-14 22')), ...wired.map(measure));
    const rest = free.length > 0 ? wrapText(lettering.free(free.join(' ')), room, measure) : [];
    return [...wired, ...rest].map((text) => ({ text, role: 'list' }));
  };
  const labels = (part: Part, lastOfRun: boolean): Pick<PartLabels, 'beside' | 'band'> => {
    const { device } = part;
    const lines: Writing[] = [{ text: rename(device.name), role: 'name' }];
    const rating = drawnAs(device).rating?.(device);
    if (rating && (part.mechanism === undefined || part.form === 'coil' || !isCoilDevice(places, part)))
      lines.push({ text: say(lettering.ratings, rating), role: 'text' });
    // A controller's point says what it is for; its controller need not be told at each.
    const point = part.form === 'input' || part.form === 'output';
    const text = point
      ? (part.text ?? device.text ?? '')
      : [part.text, device.text].filter(Boolean).join(': ');
    if (isCoilDevice(places, part)) {
      const coil = places.coilOf.get(part.mechanism as string) as Part;
      lines.push({ text: places.placeOfRun(places.drawn.runOfPart[coil.index] as number), role: 'place' });
      return { beside: label(lines), band: label([]) };
    }
    // A motor has room beside it, and mostly stands high above the return.
    if (!isLoad(part.form) || !lastOfRun || isPolyphase(part.form))
      return { beside: label([...lines, ...wrapped(text)]), band: label(bandList(part)) };
    return { beside: label(lines), band: label([...wrapped(text), ...bandList(part)]) };
  };
  return (part, lastOfRun) => {
    const { beside, band } = labels(part, lastOfRun);
    const numbers = part.spots.map(({ terminal }) => profile.measure(terminal, 'number'));
    return { beside, band, body: profile.body(part), numbers };
  };
}
