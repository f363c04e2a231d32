/** Every symbol in characters, a line each; apart from their art, which the page draws without ever writing one. */
import type { Actuator, Delay } from '../parts/moving.ts';
import { LETTER } from '../symbols/coil.symbol.ts';
import type { PartForm } from '../symbols/registry.ts';
import { changeover } from './changeover.sign.ts';
import { motor } from './motor.sign.ts';
import { bar, bladeCells, body, boxCells, type Sign } from './sign.ts';

const contact = (write: Sign['write']): Sign => ({ cells: bladeCells(1, 2), write });
const small = (write: Sign['write']): Sign => ({ cells: boxCells(1, 2), write });
const wide = (write: Sign['write']): Sign => ({ cells: boxCells(2, 3), write });

const make = contact(body((seen) => (seen.closed?.[0] ? ['╱', 0] : ['╲', -1])));
const breaks = contact(body(({ closed }) => [closed?.[0] === false ? '╴ ╱' : '└╱', 0]));

/** A delay's T before or after the arrow. */
const DELAY: Readonly<Record<Delay, string>> = { operate: 'T›', release: '‹T', pulse: 'TT' };

export const SIGNS: Readonly<Record<PartForm, Sign>> = {
  make,
  break: breaks,
  changeover,
  'main-make': make,
  'main-break': breaks,
  'breaker-pole': contact(body((seen) => (seen.closed?.[0] ? ['×', 0] : ['╲×', -1]))),
  'isolator-pole': contact(body((seen) => (seen.closed?.[0] ? ['╱', 0] : ['╲╴', -1]))),
  fuse: small(body((seen) => [seen.closed?.[0] === false ? '[ ]' : `[${bar(seen)}]`, -1])),
  heater: small(body(() => ['[S]', -1])),
  coil: wide(
    body(({ filled }, { delay, winding }) => [
      `[${(winding ? LETTER[winding] : delay ? DELAY[delay] : '').padEnd(3, filled)}]`,
      -2,
    ]),
  ),
  lamp: small(body(({ filled }) => [`(${filled === ' ' ? '╳' : filled})`, -1])),
  sounder: small(body(({ filled }) => [`[${filled === ' ' ? ')' : filled}]`, -1])),
  valve: wide(body(({ filled }) => [`[${'><'.padEnd(3, filled)}]`, -2])),
  motor,
  input: wide(body(({ input: reads }) => [`[${reads}]`, -2])),
  output: wide(body((seen) => [seen.closed?.[0] ? '[ ╱ ]' : '[╲  ]', -2])),
  common: wide(body(() => ['[COM]', -2])),
  terminal: {
    cells: () => ({ left: 0, right: 1, height: 1 }),
    write: (canvas, { x, top }) => canvas.put(x, top, '○'),
  },
};

/** What moves a contact, left of it. */
export const ACTUATOR_SIGNS: Readonly<Record<Actuator, string>> = {
  push: 'E',
  mushroom: 'D',
  turn: 'F',
  field: '[',
  limit: '<',
  float: 'o',
  trip: '#',
  elsewhere: '╌',
  joined: '╌',
};
