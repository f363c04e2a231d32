/**
 * The drawing in words, for who cannot see it: path by path from top to bottom as it is drawn, at rest. It says what is
 * connected to what, and nothing of what happens then.
 */
import type { Circuit, Supply } from '../../../shared/circuit.ts';
import { findPlaces, type Places } from '../layout/places.ts';
import { plainLetters, type Rename } from '../letters.ts';
import { footOfJoined, type Part, type Run, type RunPart } from '../parts/index.ts';
import { isAbove } from '../parts/survey.ts';
import { partWords } from './part-words.ts';

function supplyWords({ name, volts, current, text }: Supply): string {
  const poles = current === 'AC' ? 'L and N' : current === 'DC' ? 'L+ and L-' : 'L1, L2, L3 and N';
  return `Supply ${name}${text ? ` "${text}"` : ''}: ${volts} V ${current}, poles ${poles}.`;
}

class Telling {
  private readonly places: Places;
  private readonly rename: Rename;

  constructor(places: Places, rename: Rename) {
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

  /** `path 2`, or `sheet 1, path 2` where there are several sheets. */
  private path(run: number): string {
    const [sheet, column] = this.places.placeOfRun(run).slice(1).split('.');
    return column === undefined ? `path ${sheet}` : `sheet ${sheet}, path ${column}`;
  }

  /** Where a conductor comes from, or goes to: a supply's pole, or a terminal in another path. */
  private end(net: number, run: Run): string {
    const { wiring, runOfPart } = this.places.drawn;
    const { rails, ports } = wiring.nets[net] ?? { rails: [], ports: [] };
    if (rails.length > 0) return rails.join(' and ');
    const others = ports.filter((port) => runOfPart[wiring.partOfPort[port] as number] !== run.index);
    const [first] = others;
    if (first === undefined) return '';
    return `${this.terminal(first)} (${this.path(runOfPart[wiring.partOfPort[first] as number] as number)})`;
  }

  private passed({ part: index, above, below }: RunPart): string {
    const part = this.part(index);
    const { wiring } = this.places.drawn;
    const name = (port: number): string => part.spots[wiring.spotOfPort[port] as number]?.terminal ?? '';
    if (part.form === 'terminal') return part.spots[0]?.terminal ?? '';
    if (part.form === 'changeover') {
      const [common, rest, operated] = part.spots.map(({ terminal }) => terminal);
      return `with common ${common}, break leg ${rest} and make leg ${operated}`;
    }
    return [above, below]
      .filter((port) => port >= 0)
      .map(name)
      .join(' to ');
  }

  /** A changeover's path goes on from one of its legs: which, and where the other goes. */
  private leg({ part: index, above, below }: RunPart): string {
    const part = this.part(index);
    if (part.form !== 'changeover') return '';
    const { drawn } = this.places;
    const spot = below < 0 || below === above || isAbove(drawn, below) ? -1 : drawn.wiring.spotOfPort[below];
    return spot === undefined || spot <= 0 ? '' : `, on from ${part.spots[spot]?.terminal}`;
  }

  private coil(part: Part): string {
    const coil = part.mechanism === undefined ? undefined : this.places.coilOf.get(part.mechanism);
    if (!coil || part.form === 'coil') return '';
    return ` (coil in ${this.path(this.places.drawn.runOfPart[coil.index] as number)})`;
  }

  private stretch(run: Run, items: readonly RunPart[], head: number, foot: number): string {
    const stops = items.map((item) => {
      const part = this.part(item.part);
      return `${partWords(part, this.passed(item), this.rename)}${this.coil(part)}${this.leg(item)}`;
    });
    const [from, to] = [this.end(head, run), this.end(foot, run)];
    return [...(from ? [`from ${from}`] : []), ...stops, ...(to ? [`to ${to}`] : [])].join('; ');
  }

  run(run: Run): string {
    const { parts, joined, head, foot } = run;
    const column = this.places.columnOfRun[run.index];
    const { wiring } = this.places.drawn;
    const first = this.stretch(run, parts.slice(0, joined), head, footOfJoined(run, wiring));
    if (joined === parts.length) return `Path ${column}: ${first}.`;
    const above = parts[joined]?.above ?? -1;
    const under = this.stretch(
      run,
      parts.slice(joined),
      above < 0 ? -1 : (wiring.netOfPort[above] as number),
      foot,
    );
    return `Path ${column}: ${first}. Further down in path ${column}: ${under}.`;
  }
}

export interface DescribeOptions {
  readonly rename?: Rename;
  readonly sheet?: number;
}

/** One line for each supply and each path, headed by the sheet's title where there are several. */
export function describe(circuit: Circuit, { rename = plainLetters, sheet }: DescribeOptions = {}): string {
  const places = findPlaces(circuit);
  const telling = new Telling(places, rename);
  const several = places.sheets.length > 1;
  const lines = [
    `Control drawing${circuit.title ? `: ${circuit.title}` : ''}. Drawn at rest: de-energised and unactuated.`,
    ...circuit.supplies.map(supplyWords),
  ];
  for (const { sheet: number, title, columns } of places.sheets) {
    if (sheet !== undefined && sheet !== number) continue;
    if (several || title) lines.push(`Sheet ${number}${title ? `: ${title}` : ''}.`);
    for (const run of columns) lines.push(telling.run(run));
  }
  return lines.join('\n');
}
