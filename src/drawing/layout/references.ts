/** How the contacts of one device find each other on a drawing: where its coil is, where its contacts are, and which are free. */
import { drawnAs } from '../devices/registry.ts';
import { fellowsOf, type Part, plansOf } from '../parts/index.ts';
import { LETTER } from '../symbols/coil.symbol.ts';
import type { DrawnPlaces } from './places.ts';

const terminalsOf = ({ spots }: Pick<Part, 'spots'>): string =>
  spots.map(({ terminal }) => terminal).join('-');

/** By way through a contact: the positions in which it is closed, where its device has positions with names. */
export function closedPositions({ device, ways }: Part): string[] {
  const names = drawnAs(device).positions?.(device);
  return names
    ? ways.map(({ closedIn }) => closedIn.map((position) => names[position]).join(' ') || '-')
    : [];
}

/** The same, of a changeover with the leg before each. */
export const positionsSaid = (part: Part): string[] =>
  closedPositions(part).map((closed, way) =>
    part.ways.length > 1 ? `${part.ways[way]?.to} ${closed}` : closed,
  );

/** What is free of a relay, pole by pole. */
export function freeOf(places: DrawnPlaces, coil: Part): string {
  const taken = new Set(
    fellowsOf(places.drawn, coil).flatMap(({ spots }) => spots.map((spot) => spot.terminal)),
  );
  return plansOf(coil.device)
    .filter(({ form, mechanism }) => form !== 'coil' && mechanism === coil.mechanism)
    .map(({ spots }) => spots.map(({ terminal }) => terminal).filter((terminal) => !taken.has(terminal)))
    .filter((pole) => pole.length > 0)
    .map((pole) => pole.join('-'))
    .join(' ');
}

const placeOf = ({ drawn, placeOfRun }: DrawnPlaces, { index }: Part): string =>
  placeOfRun(drawn.runOfPart[index] as number);

/**
 * At a coil, or at the first contact of what has none: a line each for the others that the dashed line doesn't join to it, the terminals
 * that are wired and where. Of contacts with positions also these, and those that are joined too.
 */
export function listOf(places: DrawnPlaces, part: Part, joined: readonly number[]): string[] {
  const fellows = fellowsOf(places.drawn, part);
  if (fellows.length < 2) return [];
  return fellows.flatMap((other) => {
    const at = joined.includes(other.index) ? '' : ` ${placeOf(places, other)}`;
    const closed = positionsSaid(other);
    if (closed.length === 0) return at ? terminalsOf(other) + at : [];
    return closed.map((each) => (closed.length > 1 ? each : `${terminalsOf(other)} ${each}`) + at);
  });
}

/** Anywhere else: where its coil is, of a latching relay both; of what has no coil, its first contact. */
export function moversOf(places: DrawnPlaces, part: Part, joined: readonly number[]): string[] {
  const fellows = fellowsOf(places.drawn, part);
  const [first] = fellows;
  if (!first || joined.includes(first.index)) return [];
  const coils = part.form === 'coil' ? [] : fellows.filter(({ form }) => form === 'coil');
  return (coils.length > 0 ? coils : [first]).map((coil) =>
    coil.winding ? `${LETTER[coil.winding]} ${placeOf(places, coil)}` : placeOf(places, coil),
  );
}
