/**
 * A drawing in the making: a family takes devices from the shelf and leads current paths through them; `finish` orders the
 * paths, puts them on sheets and gives the devices their designations.
 */
import type { Step } from '../../shared/circuit.ts';
import { type Chain, type Line, linesOf } from './chains.ts';
import { DeviceShelf } from './devices/shelf.ts';
import type { InputsPart, Source } from './parts.ts';

export type Zone = 'power' | 'control' | 'lamps' | 'inputs';

/** Lines that stay together, in this order. */
export interface Group {
  readonly zone: Zone;
  /** Where lines that begin with `feed` and end with `return` lead; power paths name their own terminals. */
  readonly source?: Source;
  readonly lines: Line[];
}

export class Board extends DeviceShelf {
  readonly groups: Group[] = [];

  /** A way from the supply's protected pole to its return, its parallel branches beside it. */
  line(source: Source, zone: Zone, chain: Chain): void {
    this.groups.push({ zone, source, lines: linesOf(chain, 'feed', 'return') });
  }

  /** One more way beside the last line, beginning at `from`, or at its first hop's own terminal. */
  tail(chain: Chain, from?: Step): void {
    this.groups.at(-1)!.lines.push(...linesOf(chain, from, 'return'));
  }

  /** A way from the signal supply to the next point of an input module. */
  input(inputs: InputsPart, chain: Chain, text: string): void {
    const point = inputs.next(text);
    const lines = linesOf([...chain, point], 'feed', point.leave === undefined ? undefined : 'return');
    this.groups.push({ zone: 'inputs', source: inputs.source, lines });
  }

  /** Power paths, as they are and in this order. */
  power(lines: readonly (readonly Step[])[]): void {
    this.groups.push({ zone: 'power', lines: lines.map((steps) => ({ steps })) });
  }
}
