/** The symbols of a row of columns, with what is written beside and below them. */
import { isPolyphase, type Survey } from '../parts/index.ts';
import type { Collected } from './collected.ts';
import { type Columns, type LabelsFor, labelAt, numberSide } from './extents.ts';
import type { Heights } from './heights.ts';
import type { PartLabels } from './labels.ts';
import type { Profile } from './profile.ts';
import type { Lane, PlacedPart, Section } from './section-types.ts';

export interface SymbolDrafting {
  readonly drawn: Survey;
  readonly profile: Profile;
  readonly labels: LabelsFor;
  readonly columns: Columns;
  readonly heights: Heights;
  /** How other places refer to a column. */
  readonly placeOf: (run: number) => string;
}

const halved = (spare: number, { cell }: Profile): number => (cell ? Math.floor(spare / 2) : spare / 2);

/** Places a symbol; `portY` takes down the height of its ports. */
export function drawSymbol(
  place: PlacedPart,
  on: SymbolDrafting,
  out: Collected,
  portY: Map<number, number>,
): void {
  const { profile, drawn, labels, columns, heights, placeOf } = on;
  const { part, flipped, row } = place;
  const written = labels(place);
  const { body, beside } = written;
  const rowTop = heights.rowY[row] as number;
  const room = heights.rowHeight[row] as number;
  const top = rowTop + halved(room - body.height, profile);
  const bottom = top + body.height - profile.cell;
  const xs = place.lanes.map((lane) => columns.laneX(lane));
  const x = isPolyphase(part.form)
    ? (Math.min(...xs) + Math.max(...xs)) / 2
    : (columns.x[place.column] as number) + place.shift * profile.leg;
  const first = drawn.wiring.firstPort[part.index] as number;
  const ports = part.spots.map(({ terminal, side }, spot) => {
    const y = (side === 'top') !== flipped ? top : bottom;
    portY.set(first + spot, y);
    return { terminal: `${part.device.name}:${terminal}`, x: xs[spot] as number, y };
  });
  const { form, ways, id, look, traits } = part;
  out.symbols.push({
    id,
    device: part.device.name,
    place: placeOf(drawn.runOfPart[part.index] as number),
    form,
    flipped,
    ways,
    look,
    ...traits,
    x,
    left: Math.min(x - body.left, ...xs),
    right: Math.max(x + body.right, ...xs),
    top,
    bottom,
    ports,
  });
  numberTerminals(place, written, on, out, top, bottom);
  const line = isPolyphase(part.form) ? Math.min(...xs) + profile.phase : x;
  out.lines(
    beside,
    line - labelAt(place, written, profile),
    // At a contact that another's dashed line moves, over that line.
    place.linked ? top + profile.join - beside.height : rowTop + halved(room - beside.height, profile),
    'end',
    id,
  );
}

function numberTerminals(
  place: PlacedPart,
  written: PartLabels,
  { profile, columns }: SymbolDrafting,
  out: Collected,
  top: number,
  bottom: number,
): void {
  const { part, flipped, lanes } = place;
  const height = profile.lineHeight('number');
  // Both sides of a through terminal have the same number.
  const shown = part.form === 'terminal' ? part.spots.slice(0, 1) : part.spots;
  shown.forEach(({ terminal, side }, spot) => {
    const left = numberSide(place, spot, written, profile) === 'left';
    const x = columns.laneX(lanes[spot] as Lane);
    const above = (side === 'top') !== flipped;
    const y =
      part.form === 'terminal'
        ? (top + bottom + profile.cell - height) / 2
        : above
          ? top
          : bottom + profile.cell - height;
    const at = left ? x - profile.numberGap + profile.cell : x + profile.numberGap;
    const of = `${part.device.name}:${terminal}`;
    out.text('number', terminal, at, y, left ? 'end' : 'start', of, written.numbers[spot]);
  });
}

/** Texts and contact lists below the return pole, each under its symbol; gives the height of the whole row. */
export function drawBand({ standing, columns: runs }: Section, on: SymbolDrafting, out: Collected): number {
  const { profile, labels, columns, heights } = on;
  const used = new Array<number>(runs.length).fill(heights.end);
  for (const place of standing) {
    const { band } = labels(place);
    if (band.lines.length === 0) continue;
    const { column } = place;
    const y = used[column] as number;
    const line = (columns.x[column] as number) + place.shift * profile.leg;
    const furthest = (columns.right[column] as number) - band.width - profile.gap;
    const x = Math.max(columns.left[column] as number, Math.min(line - band.width / 2, furthest));
    out.lines(band, profile.cell ? Math.floor(x) : x, y, 'start', place.part.id);
    used[column] = y + band.height;
  }
  return Math.max(heights.end, ...used);
}

/** The dashed lines from each linked part to its fellow in the column before. */
export function drawLinks({ standing }: Section, { profile }: SymbolDrafting, out: Collected): void {
  const symbols = new Map(out.symbols.map((symbol) => [symbol.id, symbol]));
  const last = new Map<string, PlacedPart>();
  for (const place of standing) {
    const { mechanism } = place.part;
    if (mechanism === undefined) continue;
    const key = `${mechanism} ${place.row}`;
    const from = symbols.get(last.get(key)?.part.id ?? '');
    const to = symbols.get(place.part.id);
    if (place.linked && from && to)
      out.links.push({
        mechanism,
        from: from.id,
        to: to.id,
        x1: from.x,
        x2: to.x,
        y: from.top + profile.join,
      });
    last.set(key, place);
  }
}
