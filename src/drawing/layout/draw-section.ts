/** One row of columns with coordinates: symbols, conductors, dots and texts, from its own upper left corner. */
import type { Supply } from '../../../shared/circuit.ts';
import type { Survey } from '../parts/index.ts';
import { Collected } from './collected.ts';
import { drawBand, drawLinks, drawSymbol } from './draw-symbols.ts';
import { drawTrunk } from './draw-trunks.ts';
import type { Columns, LabelsFor } from './extents.ts';
import { stackRows } from './heights.ts';
import type { Profile } from './profile.ts';
import type { Cluster, Section, Trunk } from './section-types.ts';
import { Across, fillChannels, findSideways } from './sideways.ts';

export interface Drafting {
  readonly drawn: Survey;
  readonly profile: Profile;
  readonly labels: LabelsFor;
  /** The number over a column. */
  readonly columnName: (run: number) => string;
  /** How other places refer to it. */
  readonly placeOf: (run: number) => string;
  /** What a conductor is called, by net. */
  readonly namesOf: (net: number) => readonly string[];
}

/** The three-phase supplies whose conductors begin in a row: what each of them is stands once over its conductors. */
const phasesIn = ({ trunks }: Section, { circuit, wiring }: Survey): Supply[] =>
  circuit.supplies.filter(
    ({ name, current }) =>
      current === '3AC' &&
      trunks.some(
        ({ net, before }) => before && wiring.nets[net]?.rails.some((rail) => rail.startsWith(`${name}:`)),
      ),
  );

export function drawSection(
  section: Section,
  columns: Columns,
  { drawn, profile, labels, columnName, placeOf, namesOf }: Drafting,
): Collected {
  const across = new Across(section, columns, profile);
  const channels = fillChannels(section.rows, findSideways(section, across), profile.gap);
  const out = new Collected(profile);
  let head = profile.lineHeight('path');
  for (const { name, volts } of phasesIn(section, drawn)) {
    out.text('rail', `3/N/PE ~ ${volts} V 50 Hz`, 0, head, 'start', name);
    head += profile.lineHeight('rail');
  }
  const heights = stackRows(
    section,
    channels.map(({ count }) => count),
    labels,
    profile,
    head,
  );
  section.columns.forEach((run, column) => {
    const name = columnName(run.index);
    out.text('path', name, columns.x[column] as number, 0, 'middle', `path ${name}`);
  });
  const on = { drawn, profile, labels, columns, heights, placeOf };
  const portY = new Map<number, number>();
  for (const place of section.standing) drawSymbol(place, on, out, portY);
  const yOf = new Map<Trunk | Cluster, number>();
  channels.forEach(({ items, track }, channel) => {
    items.forEach((item, index) => {
      const first = heights.trackY[channel] as number;
      yOf.set(item.of, first + (track[index] as number) * profile.channel.pitch);
    });
  });
  for (const trunk of section.trunks) drawTrunk(trunk, { profile, across, portY, yOf, namesOf }, out);
  drawLinks(section, on, out);
  out.width = Math.max(columns.width, ...out.texts.map(({ x, width }) => x + width));
  out.height = drawBand(section, on, out);
  return out;
}
