/** What is written at each part: name and texts to its left, and below the return pole what belongs to a load. */
import { type Lettering, say } from '../../words/index.ts';
import { drawnAs } from '../devices/registry.ts';
import { fellowsOf, isLoad, isPolyphase, type Part } from '../parts/index.ts';
import type { TextRole } from '../scene/types.ts';
import type { DrawnPlaces } from './places.ts';
import type { Body, Profile } from './profile.ts';
import { freeOf, listOf, moversOf, positionsSaid } from './references.ts';
import type { PlacedPart } from './section-types.ts';
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

export function labelsOf(
  { lettering }: Lettering,
  places: DrawnPlaces,
  profile: Profile,
  rename: (designation: string) => string,
): (place: PlacedPart) => PartLabels {
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
  const listed = (texts: readonly string[]): Writing[] => texts.map((text) => ({ text, role: 'list' }));
  /** Under a coil: its contacts and where they are; and what is free. */
  const coilList = (coil: Part): Writing[] => {
    const wired = listOf(places, coil, [coil.index]);
    const measure = (text: string): number => profile.measure(text, 'list');
    const room = Math.max(measure(lettering.free('11-12-14 22')), ...wired.map(measure));
    const free = freeOf(places, coil);
    return listed([...wired, ...(free ? wrapText(lettering.free(free), room, measure) : [])]);
  };
  const labels = ({ part, lastOfRun, linked, joined }: PlacedPart): Pick<PartLabels, 'beside' | 'band'> => {
    const { device, form } = part;
    const several = fellowsOf(places.drawn, part).length > 1;
    const said = positionsSaid(part).map((text): Writing => ({ text, role: 'text' }));
    if (linked)
      return {
        beside: label(
          said.length > 1 ? [{ text: said.map(({ text }) => text).join(' '), role: 'text' }] : said,
        ),
        band: label([]),
      };
    const lines: Writing[] = [{ text: rename(device.name), role: 'name' }];
    const movers = moversOf(places, part, joined).map((text): Writing => ({ text, role: 'place' }));
    if (movers.length > 0)
      return {
        beside: label([...lines, ...said, ...movers]),
        band: label([]),
      };
    const rating = drawnAs(device).rating?.(device);
    if (rating) lines.push({ text: say(lettering.ratings, rating), role: 'text' });
    // A controller's point says what it is for; its controller need not be told at each.
    const point = form === 'input' || form === 'output';
    const text = wrapped(point ? (part.text ?? device.text ?? '') : (device.text ?? ''));
    const list = form === 'coil' ? coilList(part) : listed(listOf(places, part, joined));
    if (isLoad(form) && lastOfRun && !isPolyphase(form))
      return { beside: label(lines), band: label([...text, ...list]) };
    return {
      beside: label([...lines, ...(several ? [] : said), ...text, ...list]),
      band: label([]),
    };
  };
  return (place) => {
    const { beside, band } = labels(place);
    const numbers = place.part.spots.map(({ terminal }) => profile.measure(terminal, 'number'));
    return { beside, band, body: profile.body(place.part), numbers };
  };
}
