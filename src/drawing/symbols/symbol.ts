/** What a symbol is to all of the drawing that doesn't know symbols one by one. */
import type { StopSaid } from '../../words/index.ts';
import type { Actuator, Delay, Winding } from '../parts/moving.ts';
import type { Ink } from '../picture/ink.ts';
import type { ShownState } from '../states/shown-state.ts';
import { line, type Outline, type Point, type SymbolArt } from './art.ts';

/** What of a part, beside its form, decides how it looks. */
export interface Look {
  readonly actuator?: Actuator;
  readonly delay?: Delay;
  readonly winding?: Winding;
  /** Its terminals: a motor has three or six. */
  readonly terminals: number;
  readonly flipped: boolean;
  /** A box of a single terminal has it above. */
  readonly above: boolean;
}

/** A symbol where it stands on a drawing. */
export interface DrawnSymbol {
  readonly device: string;
  readonly flipped: boolean;
  readonly delay?: Delay;
  readonly winding?: Winding;
  /** Of a coil: its name in a state. */
  readonly coil?: string;
  readonly x: number;
  readonly top: number;
  readonly ports: readonly { readonly terminal: string; readonly x: number; readonly y: number }[];
}

/** How far a symbol reaches from its line, and how high it is. */
export interface Body {
  readonly left: number;
  readonly right: number;
  readonly height: number;
}

export interface PartSymbol {
  /** Contacts; poles, which stand side by side in power paths; what uses the current, drawn in one row at the return side; others. */
  readonly sort: 'contact' | 'pole' | 'load' | 'other';
  /** What it is called where a path passes it: `whole` as its device is, there being no more to it. */
  readonly said: StopSaid['says'];
  /** Its terminals stand side by side, one for each phase. */
  readonly phases?: boolean;
  readonly art: (look: Look) => SymbolArt;
  /** Where the dashed line meets it at rest or moved, seen from either side; left out where it is a make's blade. */
  readonly edge?: (closed: readonly boolean[], side: 'left' | 'right') => number;
  /** Where it is open, if it has no blade. */
  readonly gap?: Point;
  /** What a state adds to it. */
  readonly effect?: (symbol: DrawnSymbol, state: ShownState) => readonly (readonly [Ink, Outline])[];
}

/** A square wave round its middle, as in a flasher's coil: what flashes has it in place of being filled. */
export const pulse = (x: number, y: number): Outline =>
  line([x - 4, y + 4], [x - 2, y + 4], [x - 2, y - 4], [x + 2, y - 4], [x + 2, y + 4], [x + 4, y + 4]);

/** What a state adds to the only load of its device: filled while it is on, `half` of it with too little voltage. */
export const loadEffect =
  (inside: (half: boolean) => Outline, flash: Outline): NonNullable<PartSymbol['effect']> =>
  ({ device }, { loads }) => {
    const load = loads.get(device) ?? 'dark';
    if (load === 'dark') return [];
    return load === 'flashing' ? [['ray', flash]] : [['lit', inside(load === 'dim')]];
  };
