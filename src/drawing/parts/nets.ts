/** Which spots of which parts are joined: the conductors, as they are drawn. */
import type { Part } from './part.ts';
import type { Stop, Stops } from './stops.ts';

/** One conductor. A through terminal parts a conductor into two that meet in its ring. */
export interface Net {
  readonly index: number;
  /** The supply terminals on it (`A:L`), in the circuit's order. */
  readonly rails: readonly string[];
  /** Port numbers on it. */
  readonly ports: readonly number[];
  /** Its first terminal in the circuit's order: what a continuation mark calls it. */
  readonly name: string;
}

/** Ports are numbered through: part by part, spot by spot. */
export interface Wiring {
  readonly nets: readonly Net[];
  /** The net of each port, or -1 where the spot is not wired and not part of any path. */
  readonly netOfPort: Int32Array;
  readonly partOfPort: Int32Array;
  readonly spotOfPort: Int32Array;
  /** The number of a part's first port. */
  readonly firstPort: readonly number[];
  readonly railNet: ReadonlyMap<string, number>;
}

class Joins {
  private readonly parent: number[] = [];
  add(): number {
    this.parent.push(this.parent.length);
    return this.parent.length - 1;
  }
  root(item: number): number {
    let at = item;
    while (this.parent[at] !== at) {
      const up = this.parent[at] as number;
      this.parent[at] = this.parent[up] as number;
      at = up;
    }
    return at;
  }
  join(one: number, other: number): void {
    const [a, b] = [this.root(one), this.root(other)];
    if (a !== b) this.parent[Math.max(a, b)] = Math.min(a, b);
  }
}

export function findNets({ parts, pieces }: Stops): Wiring {
  const joins = new Joins();
  const firstPort: number[] = [];
  const partOf: number[] = [];
  const spotOf: number[] = [];
  for (const part of parts) {
    firstPort.push(partOf.length);
    part.spots.forEach((_, spot) => {
      joins.add();
      partOf.push(part.index);
      spotOf.push(spot);
    });
  }
  const ports = partOf.length;
  const port = (part: number, spot: number): number => (firstPort[part] as number) + spot;
  const used = new Uint8Array(ports);
  const rails = new Map<string, number>();
  const ends = (stop: Stop): readonly [number, number] => {
    switch (stop.kind) {
      case 'rail': {
        let rail = rails.get(stop.terminal);
        if (rail === undefined) {
          rail = joins.add();
          rails.set(stop.terminal, rail);
        }
        return [rail, rail];
      }
      case 'hop':
        return [port(stop.part, stop.enter), port(stop.part, stop.leave)];
      case 'touch':
        return [port(stop.part, stop.spot), port(stop.part, stop.spot)];
    }
  };
  for (const { stops } of pieces) {
    let before = -1;
    stops.forEach((stop, index) => {
      const [enter, leave] = ends(stop);
      const through = stop.kind === 'hop' && (parts[stop.part] as Part).form === 'terminal';
      if (enter < ports && !(through && index === 0)) used[enter] = 1;
      if (leave < ports && !(through && index === stops.length - 1)) used[leave] = 1;
      if (before >= 0) joins.join(before, enter);
      before = leave;
    });
  }
  joinSharedTerminals(parts, used, (part, spot) => port(part, spot), joins);
  return collect({ parts, firstPort, partOf, spotOf, used, rails, joins });
}

/**
 * A terminal that is drawn at several parts (the common of a controller's points, A2 of a timer with a supply and a control input)
 * is one terminal still: wired at all of them.
 */
function joinSharedTerminals(
  parts: readonly Part[],
  used: Uint8Array,
  port: (part: number, spot: number) => number,
  joins: Joins,
): void {
  const shared = new Map<string, number[]>();
  for (const { form, index, device, spots } of parts) {
    if (form !== 'input' && form !== 'output' && form !== 'common' && form !== 'coil') continue;
    spots.forEach(({ terminal }, spot) => {
      const key = `${device.name}:${terminal}`;
      const at = port(index, spot);
      const others = shared.get(key);
      if (others) others.push(at);
      else shared.set(key, [at]);
    });
  }
  for (const ports of shared.values()) {
    if (!ports.some((at) => used[at])) continue;
    for (const at of ports) {
      used[at] = 1;
      joins.join(ports[0] as number, at);
    }
  }
}

interface Parts {
  readonly parts: readonly Part[];
  readonly firstPort: readonly number[];
  readonly partOf: readonly number[];
  readonly spotOf: readonly number[];
  readonly used: Uint8Array;
  readonly rails: ReadonlyMap<string, number>;
  readonly joins: Joins;
}

function collect({ parts, firstPort, partOf, spotOf, used, rails, joins }: Parts): Wiring {
  const nets: { index: number; rails: string[]; ports: number[]; name: string }[] = [];
  const byRoot = new Map<number, number>();
  const netAt = (item: number): number => {
    const root = joins.root(item);
    let net = byRoot.get(root);
    if (net === undefined) {
      net = nets.length;
      byRoot.set(root, net);
      nets.push({ index: net, rails: [], ports: [], name: '' });
    }
    return net;
  };
  const netOfPort = new Int32Array(partOf.length).fill(-1);
  partOf.forEach((part, port) => {
    if (!used[port]) return;
    const net = netAt(port);
    netOfPort[port] = net;
    const entry = nets[net] as (typeof nets)[number];
    entry.ports.push(port);
    if (!entry.name) {
      const owner = parts[part] as Part;
      entry.name = `${owner.device.name}:${owner.spots[spotOf[port] as number]?.terminal ?? ''}`;
    }
  });
  const railNet = new Map<string, number>();
  for (const [terminal, item] of rails) {
    const net = netAt(item);
    railNet.set(terminal, net);
    nets[net]?.rails.push(terminal);
  }
  return {
    nets,
    netOfPort,
    partOfPort: Int32Array.from(partOf),
    spotOfPort: Int32Array.from(spotOf),
    firstPort,
    railNet,
  };
}
