/**
 * The drawing in words, for who cannot see it: path by path from top to bottom as it is drawn, at rest. It says what is
 * connected to what, and nothing of what happens then.
 */
import type { Circuit, Supply } from '../../../shared/circuit.ts';
import {
  type DescribedSaid,
  type End,
  type PathPlace,
  type Stretch,
  say,
  type Words,
} from '../../words/index.ts';
import { type DrawnPlaces, findPlaces } from '../layout/places.ts';
import { plainLetters, type Rename } from '../letters.ts';
import { fellowsOf, footOfJoined, type Part, type Run, type RunPart } from '../parts/index.ts';
import { isAbove } from '../parts/survey.ts';
import { stopSaid } from './stop-said.ts';

function supplySaid({ name, volts, current, text }: Supply): DescribedSaid {
  return { says: 'supply', name, volts, current, ...(text ? { text } : {}) };
}

class Telling {
  private readonly places: DrawnPlaces;
  private readonly rename: Rename;

  constructor(places: DrawnPlaces, rename: Rename) {
    this.places = places;
    this.rename = rename;
  }

  private part(index: number): Part {
    return this.places.drawn.parts[index] as Part;
  }

  private terminal(port: number): string {
    const { wiring } = this.places.drawn;
    const part = this.part(wiring.partOfPort[port] as number);
    return `${this.rename(part.device.name)}:${part.spots[wiring.spotOfPort[port] as number]?.terminal ?? ''}`;
  }

  /** `2`, or `2` on sheet `1` where there are several sheets. */
  private path(run: number): PathPlace {
    const [sheet = '', column] = this.places.placeOfRun(run).slice(1).split('.');
    return column === undefined ? { path: sheet } : { path: column, sheet };
  }

  /** Where a conductor comes from, or goes to: a supply's pole, or a terminal in another path. */
  private end(net: number, run: Run): End | undefined {
    const { wiring, runOfPart } = this.places.drawn;
    const { rails, ports } = wiring.nets[net] ?? { rails: [], ports: [] };
    if (rails.length > 0) return { poles: rails };
    const others = ports.filter((port) => runOfPart[wiring.partOfPort[port] as number] !== run.index);
    const [first] = others;
    if (first === undefined) return undefined;
    const place = this.path(runOfPart[wiring.partOfPort[first] as number] as number);
    return { terminal: this.terminal(first), place };
  }

  private passed({ part: index, above, below }: RunPart): string[] {
    const part = this.part(index);
    const { wiring } = this.places.drawn;
    const name = (port: number): string => part.spots[wiring.spotOfPort[port] as number]?.terminal ?? '';
    if (part.form === 'terminal') return [part.spots[0]?.terminal ?? ''];
    return [above, below].filter((port) => port >= 0).map(name);
  }

  /** A changeover's path goes on from one of its legs: which. */
  private leg({ part: index, above, below }: RunPart): string | undefined {
    const part = this.part(index);
    if (part.form !== 'changeover') return undefined;
    const { drawn } = this.places;
    const spot = below < 0 || below === above || isAbove(drawn, below) ? -1 : drawn.wiring.spotOfPort[below];
    return spot === undefined || spot <= 0 ? undefined : part.spots[spot]?.terminal;
  }

  private coil(part: Part): PathPlace | undefined {
    const [coil] = fellowsOf(this.places.drawn, part);
    if (coil?.form !== 'coil' || part.form === 'coil') return undefined;
    return this.path(this.places.drawn.runOfPart[coil.index] as number);
  }

  private stretch(run: Run, items: readonly RunPart[], head: number, foot: number): Stretch {
    const stops = items.map((item) => {
      const part = this.part(item.part);
      const at = { passed: this.passed(item), coil: this.coil(part), onFrom: this.leg(item) };
      return stopSaid(part, at, this.rename);
    });
    const [from, to] = [this.end(head, run), this.end(foot, run)];
    return { stops, ...(from ? { from } : {}), ...(to ? { to } : {}) };
  }

  run(run: Run): DescribedSaid {
    const { parts, joined, head, foot } = run;
    const path = String(this.places.columnOfRun[run.index]);
    const { wiring } = this.places.drawn;
    const first = this.stretch(run, parts.slice(0, joined), head, footOfJoined(run, wiring));
    if (joined === parts.length) return { says: 'path', path, whole: first };
    const above = parts[joined]?.above ?? -1;
    const below = this.stretch(
      run,
      parts.slice(joined),
      above < 0 ? -1 : (wiring.netOfPort[above] as number),
      foot,
    );
    return { says: 'pathInTwo', path, above: first, below };
  }
}

export interface DescribeOptions {
  readonly rename?: Rename;
  readonly sheet?: number;
}

/** A statement for each supply and each path, headed by the sheet's title where there are several. */
export function described(
  circuit: Circuit,
  { rename = plainLetters, sheet }: DescribeOptions = {},
): DescribedSaid[] {
  const places = findPlaces(circuit);
  const telling = new Telling(places, rename);
  const several = places.sheets.length > 1;
  const lines: DescribedSaid[] = [
    circuit.title ? { says: 'drawingTitled', title: circuit.title } : { says: 'drawing' },
    ...(circuit.asFound ? [{ says: 'asFound' } as const] : []),
    ...circuit.supplies.map(supplySaid),
  ];
  for (const { sheet: number, title, columns } of places.sheets) {
    if (sheet !== undefined && sheet !== number) continue;
    if (title) lines.push({ says: 'sheetTitled', sheet: number, title });
    else if (several) lines.push({ says: 'sheet', sheet: number });
    for (const run of columns) lines.push(telling.run(run));
  }
  return lines;
}

/** The same in words, a line for each. */
export const describe = (
  { drawing }: Pick<Words, 'drawing'>,
  circuit: Circuit,
  options: DescribeOptions = {},
): string =>
  described(circuit, options)
    .map((said) => say(drawing.described, said))
    .join('\n');
