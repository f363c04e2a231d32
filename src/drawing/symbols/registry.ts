/** Every symbol, a line each, under the name of the form that a part has in it. */
import { breaks } from './break.symbol.ts';
import { breakerPole } from './breaker-pole.symbol.ts';
import { changeover } from './changeover.symbol.ts';
import { coil } from './coil.symbol.ts';
import { common } from './common.symbol.ts';
import { fuse } from './fuse.symbol.ts';
import { heater } from './heater.symbol.ts';
import { input } from './input.symbol.ts';
import { isolatorPole } from './isolator-pole.symbol.ts';
import { lamp } from './lamp.symbol.ts';
import { mainBreak } from './main-break.symbol.ts';
import { mainMake } from './main-make.symbol.ts';
import { make } from './make.symbol.ts';
import { motor } from './motor.symbol.ts';
import { output } from './output.symbol.ts';
import { sounder } from './sounder.symbol.ts';
import type { PartSymbol } from './symbol.ts';
import { terminal } from './terminal.symbol.ts';
import { valve } from './valve.symbol.ts';

export const SYMBOLS = {
  make,
  break: breaks,
  changeover,
  'main-make': mainMake,
  'main-break': mainBreak,
  'breaker-pole': breakerPole,
  'isolator-pole': isolatorPole,
  fuse,
  heater,
  coil,
  lamp,
  sounder,
  valve,
  motor,
  input,
  output,
  common,
  terminal,
} satisfies Readonly<Record<string, PartSymbol>>;

/** What a part looks like at rest. A changeover of which one leg is used is a make or a break. */
export type PartForm = keyof typeof SYMBOLS;

export const symbolOf = (form: PartForm): PartSymbol => SYMBOLS[form];
