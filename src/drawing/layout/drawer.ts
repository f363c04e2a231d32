/** Rows of columns: ordered, folded to the width of the medium, and drawn. */
import type { Circuit } from '../../../shared/circuit.ts';
import type { Lettering } from '../../words/index.ts';
import type { Rename } from '../letters.ts';
import type { Part, Run } from '../parts/index.ts';
import { blocksOf } from './blocks.ts';
import type { Collected } from './collected.ts';
import { type Drafting, drawSection } from './draw-section.ts';
import { type Columns, findColumns, type LabelsFor, LOOSELY, TIED } from './extents.ts';
import { type Foldable, fold } from './fold.ts';
import { labelsOf, type PartLabels } from './labels.ts';
import type { Levels } from './levels.ts';
import { type DrawnPlaces, findPlaces, type SheetColumns } from './places.ts';
import type { Profile } from './profile.ts';
import { outline, planSection } from './section.ts';
import type { Ends, PlacedPart, Section } from './section-types.ts';

/** What a supply pole's conductor is called at its left end: `A:L 24 V AC`, a phase by its name alone; two that are joined, both names. */
function railText(circuit: Circuit, rails: readonly string[]): string {
  if (rails.length !== 1) return rails.join(' ');
  const supply = circuit.supplies.find(({ name }) => rails[0]?.startsWith(`${name}:`));
  return supply && supply.current !== '3AC'
    ? `${rails[0]} ${supply.volts} V ${supply.current}`
    : (rails[0] ?? '');
}

/** By net: the columns it is met in, left to right over all sheets. */
function meetings(places: DrawnPlaces): number[][] {
  const { drawn, sheets } = places;
  const { wiring, parts } = drawn;
  const byNet: number[][] = wiring.nets.map(() => []);
  for (const { columns } of sheets)
    for (const run of columns) {
      for (const { part } of run.parts) {
        const first = wiring.firstPort[part] as number;
        parts[part]?.spots.forEach((_, spot) => {
          const list = byNet[wiring.netOfPort[first + spot] as number];
          if (list && list[list.length - 1] !== run.index) list.push(run.index);
        });
      }
    }
  return byNet;
}

const slice = ({ left, right, cuts, lead }: Foldable, from: number, to: number): Foldable => ({
  left: left.slice(from, to),
  right: right.slice(from, to),
  cuts: cuts.slice(from, to),
  lead: lead.slice(from, to),
});

/** One row of columns before it is drawn. */
interface Planned {
  readonly labels: LabelsFor;
  readonly blocks: readonly { readonly section: Section; readonly across: Columns }[];
  readonly width: number;
}

/** What the dashed line joins depends on how the columns are folded; all else is written once. */
function keptLabels(make: LabelsFor): LabelsFor {
  const kept = new Map<Part | PlacedPart, PartLabels>();
  return (place) => {
    const key = place.joined.length > 1 ? place : place.part;
    let found = kept.get(key);
    if (!found) {
      found = make(place);
      kept.set(key, found);
    }
    return found;
  };
}

export class Drawer {
  private readonly circuit: Circuit;
  readonly profile: Profile;
  private readonly places: DrawnPlaces;
  /** With texts in few long lines, in shorter ones, and in the shortest. */
  private readonly labels: readonly [LabelsFor, ...LabelsFor[]];
  private readonly rename: Rename;
  private readonly met: readonly (readonly number[])[];
  private readonly position: Int32Array;

  /** `pieces`: places leave room for which piece of a sheet they are on. */
  constructor(words: Lettering, circuit: Circuit, profile: Profile, rename: Rename, pieces = false) {
    this.circuit = circuit;
    this.profile = profile;
    this.rename = rename;
    this.places = findPlaces(circuit, pieces);
    const labels = (from: number): LabelsFor =>
      keptLabels(labelsOf(words, this.places, { ...profile, wraps: profile.wraps.slice(from) }, rename));
    this.labels = [labels(-1), labels(2), labels(0)];
    this.met = meetings(this.places);
    this.position = new Int32Array(this.places.drawn.runs.length);
    let at = 0;
    for (const { columns } of this.places.sheets) for (const run of columns) this.position[run.index] = at++;
  }

  sheets(): readonly SheetColumns[] {
    return this.places.sheets;
  }

  conductors(): string[][] {
    const { wiring, parts } = this.places.drawn;
    return wiring.nets.map(({ rails, ports }) => [
      ...rails,
      ...ports.map((port) => {
        const part = parts[wiring.partOfPort[port] as number];
        return `${part?.device.name}:${part?.spots[wiring.spotOfPort[port] as number]?.terminal}`;
      }),
    ]);
  }

  private conductorName(net: number): string {
    const { rails, name } = this.places.drawn.wiring.nets[net] ?? { rails: [], name: '' };
    if (rails.length > 0) return railText(this.circuit, rails);
    const colon = name.indexOf(':');
    return `${this.rename(name.slice(0, colon))}${name.slice(colon)}`;
  }

  private ends(): Ends {
    const at = (run: number): number => this.position[run] as number;
    const first = (columns: readonly Run[]): number => at(columns[0]?.index ?? 0);
    const last = (columns: readonly Run[]): number => at(columns[columns.length - 1]?.index ?? 0);
    const isRail = (net: number): boolean => (this.places.drawn.wiring.nets[net]?.rails.length ?? 0) > 0;
    const { placeOfRun } = this.places;
    const earlier = (net: number, columns: readonly Run[]): number | undefined => {
      const met = this.met[net] ?? [];
      const from = first(columns);
      for (let index = met.length - 1; index >= 0; index--)
        if (at(met[index] as number) < from) return met[index];
      return undefined;
    };
    return {
      before: (net, columns) => {
        if (isRail(net)) return this.conductorName(net);
        const run = earlier(net, columns);
        return run === undefined ? '' : `${this.conductorName(net)} ${placeOfRun(run)}`;
      },
      after: (net, columns) => {
        const to = last(columns);
        const later = this.met[net]?.find((run) => at(run) > to);
        if (later === undefined) return '';
        // Named at its left end already, it says here only where it goes on.
        const named = isRail(net) || earlier(net, columns) !== undefined;
        return named ? placeOfRun(later) : `${this.conductorName(net)} ${placeOfRun(later)}`;
      },
    };
  }

  /** The rows of one sheet, each as wide as the medium allows. */
  rows({ columns, levels }: SheetColumns): Collected[] {
    const { drawn, columnOfRun, placeOfRun } = this.places;
    const { profile } = this;
    const narrow = this.labels.at(-1) as LabelsFor;
    const drafting: Omit<Drafting, 'labels'> = {
      drawn,
      profile,
      columnName: (run) => String(columnOfRun[run]),
      placeOf: placeOfRun,
      namesOf: (net) => {
        const { rails = [], name = '' } = drawn.wiring.nets[net] ?? {};
        return rails.length > 0 ? rails : [name];
      },
    };
    const ends = this.ends();
    const planRow = (list: readonly Run[], known?: Levels): Planned => {
      const sections = blocksOf(drawn, list).map((block) =>
        planSection(drawn, block, ends, block.length === list.length ? known : undefined),
      );
      const gaps = (sections.length - 1) * profile.gap;
      const planned = (labels: LabelsFor): Planned => {
        const blocks = sections.map((section) => ({
          section,
          across: findColumns(section, labels, profile),
        }));
        return { labels, blocks, width: blocks.reduce((sum, { across }) => sum + across.width, gaps) };
      };
      // Texts use the width that is there.
      const [wide, ...others] = this.labels;
      let row = planned(wide);
      for (const labels of others) if (row.width > profile.width) row = planned(labels);
      return row;
    };
    const drawRow = ({ blocks, labels }: Planned): Collected => {
      const [first, ...others] = blocks.map(({ section, across }) =>
        drawSection(section, across, { ...drafting, labels }),
      );
      for (const other of others) first?.takeBeside(other);
      return first as Collected;
    };
    // Measured without conductors first: mostly the whole does not fit, and need not be planned.
    const measured = findColumns(outline(drawn, columns, levels), narrow, profile);
    if (measured.width <= profile.width) {
      const whole = planRow(columns, levels);
      if (whole.width <= profile.width || columns.length === 1) return [drawRow(whole)];
    }
    const foldable = {
      left: measured.left,
      right: measured.right,
      cuts: this.cuts(columns, measured.tied),
      lead: this.leads(columns, measured),
    };
    const rows: Collected[] = [];
    for (let from = 0; from < columns.length; ) {
      // What is cut needs room for its marks: a row that comes out too wide is folded again, narrower.
      for (let width = profile.width, start = from; from === start; ) {
        const end = from + (fold(slice(foldable, from, columns.length), width)[1] ?? columns.length - from);
        const row = planRow(columns.slice(from, end));
        const over = row.width - profile.width;
        if (over <= 0 || end - from < 2) {
          rows.push(drawRow(row));
          from = end;
        } else width = Math.min(width, row.width) - Math.max(over, profile.width * 0.03);
      }
    }
    return rows;
  }

  /** More than the column itself takes on its left when supply names stand before it. */
  private leads(
    columns: readonly Run[],
    measured: { x: readonly number[]; left: readonly number[] },
  ): number[] {
    const { stub, numberGap, measure } = this.profile;
    const widest = Math.max(
      0,
      ...this.places.drawn.wiring.nets
        .filter(({ rails }) => rails.length > 0)
        .map(({ rails }) => measure(railText(this.circuit, rails), 'rail') + stub + numberGap),
    );
    return columns.map((_, index) =>
      Math.max(0, widest - (measured.x[index] as number) + (measured.left[index] as number)),
    );
  }

  private cuts(columns: readonly Run[], tied: Uint8Array): number[] {
    const cuts = new Array<number>(columns.length).fill(0);
    const columnOf = new Map(columns.map((run, index) => [run.index, index]));
    this.places.drawn.wiring.nets.forEach(({ rails }, net) => {
      if (rails.length > 0) return;
      const here = (this.met[net] ?? []).flatMap((run) => columnOf.get(run) ?? []);
      if (here.length < 2) return;
      const last = Math.max(...here);
      for (let column = Math.min(...here) + 1; column <= last; column++)
        cuts[column] = (cuts[column] as number) + 1;
    });
    // Contacts of one hand that come to stand in different rows only show their actuator twice.
    return cuts.map((cut, column) => cut + (tied[column] === TIED ? 20 : tied[column] === LOOSELY ? 0.5 : 0));
  }
}
