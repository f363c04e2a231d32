/** One row of columns with coordinates: symbols, conductors, dots and texts, from its own upper left corner. */

import type { Survey } from '../parts/index.ts';
import type { Dot, Link, Mark, SceneSymbol, SceneText, TextRole, Wire } from '../scene/types.ts';
import { type Columns, findColumns, type LabelsFor, labelAt, numberSide } from './extents.ts';
import type { Label } from './labels.ts';
import type { Profile } from './profile.ts';
import {
  type Cluster,
  leftEnd,
  type Riser,
  rightEnd,
  type Section,
  type Standing,
  type Trunk,
} from './section.ts';
import { findTracks, type Horizontal } from './tracks.ts';

export interface DrawnSection {
  readonly width: number;
  readonly height: number;
  readonly symbols: readonly SceneSymbol[];
  readonly wires: readonly Wire[];
  readonly dots: readonly Dot[];
  readonly marks: readonly Mark[];
  readonly links: readonly Link[];
  readonly texts: readonly SceneText[];
}

export interface Drafting {
  readonly drawn: Survey;
  readonly profile: Profile;
  readonly labels: LabelsFor;
  readonly rename: (designation: string) => string;
  /** The number over a column. */
  readonly columnName: (run: number) => string;
  /** What a conductor is called, by net. */
  readonly namesOf: (net: number) => readonly string[];
}

/** A horizontal before it has a track: a trunk, or a cluster's way out to its riser. */
interface Sideways extends Horizontal {
  readonly channel: number;
  readonly of: Trunk | Cluster;
}

export function drawSection(section: Section, drafting: Drafting): DrawnSection {
  const columns = findColumns(section, drafting.labels, drafting.profile);
  return new Sheeting(section, columns, drafting).draw();
}

class Sheeting {
  private readonly section: Section;
  private readonly columns: Columns;
  private readonly on: Drafting;
  private readonly symbols: SceneSymbol[] = [];
  private readonly wires: Wire[] = [];
  private readonly dots: Dot[] = [];
  private readonly marks: Mark[] = [];
  private readonly texts: SceneText[] = [];
  private readonly portY = new Map<number, number>();
  private rowY: number[] = [];
  private rowHeight: number[] = [];
  private channelY: number[] = [];

  constructor(section: Section, columns: Columns, drafting: Drafting) {
    this.section = section;
    this.columns = columns;
    this.on = drafting;
  }

  draw(): DrawnSection {
    const sideways = this.sideways();
    const tracks = this.layChannels(sideways);
    this.stackRows(tracks.map(({ count }) => count));
    this.numberColumns();
    for (const place of this.section.standing) this.placeSymbol(place);
    const yOf = new Map<Trunk | Cluster, number>();
    tracks.forEach(({ items, track }, channel) => {
      items.forEach((item, index) => {
        const y = this.trackY(channel, track[index] as number);
        yOf.set(item.of, y);
      });
    });
    for (const trunk of this.section.trunks) this.drawTrunk(trunk, yOf);
    const height = this.placeBand();
    return {
      width: this.columns.width,
      height,
      symbols: this.symbols,
      wires: this.wires,
      dots: this.dots,
      marks: this.marks,
      links: this.findLinks(),
      texts: this.texts,
    };
  }

  private riserX(riser: Riser): number {
    const list = this.section.risers[riser.column] ?? [];
    return this.columns.riserX[riser.column]?.[list.indexOf(riser)] ?? 0;
  }

  /** Where a cluster meets its trunk. */
  private meets(cluster: Cluster): number {
    return cluster.riser ? this.riserX(cluster.riser) : this.columns.laneX(cluster.lane);
  }

  /** Lines that a trunk runs to without meeting them. */
  private reaches({ lead, leftmost, rightmost }: Trunk): number[] {
    return [lead, leftmost, rightmost].flatMap((lane) => (lane ? [this.columns.laneX(lane)] : []));
  }

  private markWidth(text: string, supply: boolean): number {
    const { profile } = this.on;
    return text ? profile.stub + profile.measure(text, supply ? 'rail' : 'mark') + profile.markGap : 0;
  }

  private sideways(): Sideways[] {
    const found: Sideways[] = [];
    for (const trunk of this.section.trunks) {
      if (!trunk.sideways) continue;
      const up: number[] = [];
      const down: number[] = [];
      const xs = this.reaches(trunk);
      for (const cluster of trunk.clusters) {
        const x = this.meets(cluster);
        xs.push(x);
        const { exit } = cluster;
        if (exit === undefined) {
          for (const pin of cluster.pins) (pin.above ? down : up).push(x);
          continue;
        }
        const fromAbove = exit < trunk.channel;
        (fromAbove ? up : down).push(x);
        const line = this.columns.laneX(cluster.lane);
        found.push({
          channel: exit,
          net: trunk.net,
          of: cluster,
          from: Math.min(line, x),
          to: Math.max(line, x),
          up: [...cluster.pins.filter((pin) => !pin.above).map(() => line), ...(fromAbove ? [] : [x])],
          down: [...cluster.pins.filter((pin) => pin.above).map(() => line), ...(fromAbove ? [x] : [])],
        });
      }
      const after =
        this.markWidth(trunk.after, trunk.supply) || (trunk.supply ? this.on.profile.overhang : 0);
      found.push({
        channel: trunk.channel,
        net: trunk.net,
        of: trunk,
        from: Math.min(...xs) - this.markWidth(trunk.before, trunk.supply),
        to: Math.max(...xs) + after,
        up,
        down,
        ...(trunk.phase === undefined ? {} : { rank: trunk.phase }),
      });
    }
    return found;
  }

  private layChannels(
    sideways: readonly Sideways[],
  ): { readonly items: readonly Sideways[]; readonly track: readonly number[]; readonly count: number }[] {
    const { gap } = this.on.profile;
    return Array.from({ length: this.section.rows + 1 }, (_, channel) => {
      const items = sideways.filter((item) => item.channel === channel);
      return { items, ...findTracks(items, gap) };
    });
  }

  private stackRows(tracks: readonly number[]): void {
    const { profile, labels } = this.on;
    const { rows, standing } = this.section;
    const heights = new Array<number>(rows).fill(0);
    for (const place of standing) {
      const { beside } = labels(place.part, place.lastOfRun);
      heights[place.row] = Math.max(
        heights[place.row] as number,
        profile.body(place.part).height,
        place.linked ? 0 : beside.height,
      );
    }
    let y = profile.lineHeight('path');
    tracks.forEach((count, channel) => {
      const { margin, pitch, empty } = profile.channel;
      this.channelY[channel] = y + margin;
      const cells = profile.cell;
      y += count === 0 ? empty : 2 * margin + (count - 1 + cells) * pitch;
      if (channel === rows) {
        this.channelY[rows + 1] = y;
        return;
      }
      this.rowY[channel] = y;
      this.rowHeight[channel] = heights[channel] as number;
      y += heights[channel] as number;
    });
  }

  private trackY(channel: number, track: number): number {
    return (this.channelY[channel] as number) + track * this.on.profile.channel.pitch;
  }

  private text(
    role: TextRole,
    text: string,
    x: number,
    y: number,
    anchor: SceneText['anchor'],
    of: string,
  ): void {
    const { profile } = this.on;
    const width = profile.measure(text, role);
    const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
    this.texts.push({
      id: `${of}/${role}${this.texts.length}`,
      role,
      text,
      x: profile.cell ? Math.round(left) : left,
      y,
      width,
      height: profile.lineHeight(role),
      anchor,
      of,
    });
  }

  private numberColumns(): void {
    this.section.columns.forEach((run, column) => {
      const name = this.on.columnName(run.index);
      this.text('path', name, this.columns.x[column] as number, 0, 'middle', `path ${name}`);
    });
  }

  private placeSymbol(place: Standing): void {
    const { profile, drawn, labels } = this.on;
    const { part, flipped } = place;
    const body = profile.body(part);
    const rowTop = this.rowY[place.row] as number;
    const spare = (this.rowHeight[place.row] as number) - body.height;
    const top = rowTop + (profile.cell ? Math.floor(spare / 2) : spare / 2);
    const bottom = top + body.height - profile.cell;
    const xs = place.lanes.map((lane) => this.columns.laneX(lane));
    const x =
      part.form === 'motor'
        ? (Math.min(...xs) + Math.max(...xs)) / 2
        : (this.columns.x[place.column] as number) + place.shift * profile.leg;
    const first = drawn.wiring.firstPort[part.index] as number;
    const ports = part.spots.map(({ terminal, side }, spot) => {
      const y = (side === 'top') !== flipped ? top : bottom;
      this.portY.set(first + spot, y);
      return { terminal: `${part.device.name}:${terminal}`, x: xs[spot] as number, y };
    });
    const { form, actuator, delay, latch, mechanism, ways, id } = part;
    this.symbols.push({
      id,
      device: part.device.name,
      form,
      flipped,
      ways,
      ...(actuator ? { actuator } : {}),
      ...(delay ? { delay } : {}),
      ...(latch ? { latch } : {}),
      ...(mechanism ? { mechanism } : {}),
      x,
      left: Math.min(x - body.left, ...xs),
      right: Math.max(x + body.right, ...xs),
      top,
      bottom,
      ports,
    });
    this.numberTerminals(place, top, bottom);
    const { beside } = labels(part, place.lastOfRun);
    if (!place.linked) {
      const free = (this.rowHeight[place.row] as number) - beside.height;
      this.lines(
        beside,
        x - labelAt(place, profile),
        rowTop + (profile.cell ? Math.floor(free / 2) : free / 2),
        'end',
        id,
      );
    }
  }

  private numberTerminals(place: Standing, top: number, bottom: number): void {
    const { profile } = this.on;
    const { part, flipped, lanes } = place;
    const shown = part.form === 'terminal' ? part.spots.slice(0, 1) : part.spots;
    shown.forEach(({ terminal, side }, spot) => {
      const left = numberSide(place, spot, profile) === 'left';
      const x = this.columns.laneX(lanes[spot] as Standing['lanes'][number]);
      const height = profile.lineHeight('number');
      const y =
        part.form === 'terminal'
          ? (top + bottom + profile.cell - height) / 2
          : (side === 'top') !== flipped
            ? top
            : bottom + profile.cell - height;
      this.text(
        'number',
        terminal,
        left ? x - profile.numberGap + profile.cell : x + profile.numberGap,
        y,
        left ? 'end' : 'start',
        `${part.device.name}:${terminal}`,
      );
    });
  }

  private lines({ lines }: Label, x: number, from: number, anchor: SceneText['anchor'], of: string): void {
    let y = from;
    for (const { text, role } of lines) {
      this.text(role, text, x, y, anchor, of);
      y += this.on.profile.lineHeight(role);
    }
  }

  private wire(net: number, x1: number, y1: number, x2: number, y2: number): void {
    if (x1 !== x2 || y1 !== y2) this.wires.push({ net, x1, y1, x2, y2 });
  }

  private drawTrunk(trunk: Trunk, yOf: ReadonlyMap<Trunk | Cluster, number>): void {
    const { net } = trunk;
    if (!trunk.sideways) {
      for (const cluster of trunk.clusters) this.drawLine(net, cluster, []);
      return;
    }
    const y = yOf.get(trunk) as number;
    const met = new Map<number, Set<string>>();
    const meet = (x: number, ...from: string[]): void => {
      const set = met.get(x) ?? new Set();
      for (const side of from) set.add(side);
      met.set(x, set);
    };
    const risers = new Map<Riser, number[]>();
    for (const cluster of trunk.clusters) {
      const { riser } = cluster;
      if (!riser) {
        this.drawLine(net, cluster, [y]);
        meet(this.columns.laneX(cluster.lane), ...cluster.pins.map((pin) => (pin.above ? 'down' : 'up')));
        continue;
      }
      const exit = yOf.get(cluster) as number;
      const line = this.columns.laneX(cluster.lane);
      this.drawLine(net, cluster, [exit]);
      this.wire(net, line, exit, this.riserX(riser), exit);
      if (cluster.pins.length > 1) this.dots.push({ net, x: line, y: exit });
      risers.set(riser, [...(risers.get(riser) ?? []), exit]);
    }
    for (const [riser, exits] of risers) meet(this.riserX(riser), ...this.drawRiser(riser, exits, y));
    const xs = [...met.keys(), ...this.reaches(trunk)];
    const { profile } = this.on;
    const left = Math.min(...xs) - (trunk.before ? profile.stub : 0);
    const right = Math.max(...xs) + (trunk.after ? profile.stub : trunk.supply ? profile.overhang : 0);
    this.wire(net, left, y, right, y);
    for (const [x, sides] of met) {
      if (x > left) sides.add('left');
      if (x < right) sides.add('right');
      if (sides.size > 2) this.dots.push({ net, x, y });
    }
    if (trunk.before && leftEnd(trunk)) this.mark(trunk, 'left', left, y);
    if (trunk.after && rightEnd(trunk)) this.mark(trunk, 'right', right, y);
  }

  /** From the trunk to the furthest of its exits on either side; says on which sides of the trunk it stands. */
  private drawRiser(riser: Riser, exits: readonly number[], y: number): string[] {
    const x = this.riserX(riser);
    const [top, bottom] = [Math.min(y, ...exits), Math.max(y, ...exits)];
    this.wire(riser.net, x, top, x, bottom);
    for (const exit of exits) if (exit > top && exit < bottom) this.dots.push({ net: riser.net, x, y: exit });
    return [...(top < y ? ['up'] : []), ...(bottom > y ? ['down'] : [])];
  }

  /** The vertical of a cluster, as far as its ports and the horizontals it meets. */
  private drawLine(net: number, cluster: Cluster, meets: readonly number[]): void {
    const ys = [...cluster.pins.map(({ port }) => this.portY.get(port) as number), ...meets];
    const x = this.columns.laneX(cluster.lane);
    this.wire(net, x, Math.min(...ys), x, Math.max(...ys));
  }

  private mark(trunk: Trunk, side: 'left' | 'right', x: number, y: number): void {
    const { profile } = this.on;
    const role = trunk.supply ? 'rail' : 'mark';
    const names = this.on.namesOf(trunk.net);
    const id = `${names[0] ?? ''}@${side}`;
    this.marks.push({ id, net: trunk.net, kind: trunk.supply ? 'supply' : 'goes-on', names, side, x, y });
    const height = profile.lineHeight(role);
    const gap = profile.markGap;
    this.text(
      role,
      side === 'left' ? trunk.before : trunk.after,
      side === 'left' ? x - gap + profile.cell : x + gap,
      profile.cell ? y : y - height / 2,
      side === 'left' ? 'end' : 'start',
      names[0] ?? '',
    );
  }

  /** Texts and contact lists below the return pole; gives the height of the whole row. */
  private placeBand(): number {
    const from = this.channelY[this.section.rows + 1] as number;
    const used = new Array<number>(this.section.columns.length).fill(from);
    for (const place of this.section.standing) {
      const { band } = this.on.labels(place.part, place.lastOfRun);
      const y = used[place.column] as number;
      const [left, right] = [
        this.columns.left[place.column] as number,
        this.columns.right[place.column] as number,
      ];
      // Under its symbol as near as the column allows.
      const line = (this.columns.x[place.column] as number) + place.shift * this.on.profile.leg;
      const middle = Math.max(left, Math.min(line - band.width / 2, right - band.width));
      const x = this.on.profile.cell ? Math.floor(middle) : middle;
      this.lines(band, x, y, 'start', place.part.id);
      used[place.column] = y + band.height;
    }
    return Math.max(from, ...used);
  }

  private findLinks(): Link[] {
    const links: Link[] = [];
    const bySymbol = new Map(this.symbols.map((symbol) => [symbol.id, symbol]));
    let before: Standing | undefined;
    const linked = this.section.standing.filter((place) => place.part.mechanism !== undefined);
    const first = new Map<string, Standing>();
    for (const place of linked) {
      const key = `${place.part.mechanism} ${place.row}`;
      before = first.get(key);
      if (place.linked && before) {
        const [from, to] = [bySymbol.get(before.part.id), bySymbol.get(place.part.id)];
        if (from && to)
          links.push({
            mechanism: place.part.mechanism as string,
            x1: from.x,
            x2: to.x,
            y: from.top + this.on.profile.join,
          });
      }
      first.set(key, place);
    }
    return links;
  }
}
