/** What a circuit comes to, without a full stop. */
import { speech } from '../speech.ts';

interface Out {
  readonly devices: readonly string[];
  readonly supplies: readonly string[];
}

interface Moving {
  readonly devices: readonly string[];
  readonly out?: Out | undefined;
}

const list = (names: readonly string[]): string => (names.length === 0 ? 'nothing' : names.join(', '));

/** What a short circuit has put out, where that isn't the outcome itself. */
const besides = (out: Out | undefined): string => {
  const opened = out?.devices.length ? `; a short circuit opened ${list(out.devices)}` : '';
  const lost = out?.supplies.length ? `; a short circuit put out supply ${list(out.supplies)}` : '';
  return opened + lost;
};

const lost = (supplies: readonly string[]): string =>
  `supply ${list(supplies)} is lost, which nothing protects`;

export const outcome = {
  steady: 'steady',
  'keeps-switching': ({ devices, out }: Moving) =>
    `keeps switching: ${list(devices)} never ${speech.plural(devices.length, { one: 'rests', other: 'rest' })}${besides(out)}`,
  race: ({ devices, ways, out }: Moving & { readonly ways: number }) =>
    `a race: which of ${list(devices)} is faster decides between ${ways} ways it can end; shown is one of them${besides(out)}`,
  undecided: ({ out }: Moving) =>
    `not decided: there are more orders of operation, or more events, than can be tried; what is shown need not be what happens${besides(out)}`,
  'protection-tripped': ({ devices, supplies }: Out) => {
    if (devices.length === 0) return `a short circuit: ${supplies.length > 0 ? lost(supplies) : ''}`;
    return supplies.length > 0
      ? `a short circuit: ${list(devices)} opened, and ${lost(supplies)}`
      : `a short circuit: ${list(devices)} opened`;
  },
};
