import type { Circuit, Device, Path, Rating, Step, Supply } from '../../shared/circuit.ts';

/** `-K3:11-14` as a hop, `-K3:11` or `A:L+` as a stop. */
function stepOf(word: string): Step {
  const match = /^(-[A-Z]+\d+|[A-Z]):([A-Z0-9]+[+-]?)(?:-([A-Z0-9]+[+-]?))?$/.exec(word);
  if (!match) throw new Error(`not a hop: ${word}`);
  const [, device = '', enter = '', leave] = match;
  return leave === undefined ? { device, enter } : { device, enter, leave };
}

/** One current path: `A:L -K3:11-14 -H1:X1-X2 A:N`. */
export const pathOf = (line: string): Path => ({ sheet: 1, steps: line.trim().split(/\s+/).map(stepOf) });

export interface Parts {
  readonly supplies?: readonly Supply[];
  readonly devices: readonly Device[];
  readonly paths: readonly string[];
}

export const dc24: Supply = { name: 'A', volts: 24, current: 'DC', earthed: false };

/** A circuit for a test, wired hop by hop. Nothing is checked. */
export const wired = ({ supplies = [dc24], devices, paths }: Parts): Circuit => ({
  supplies: [...supplies],
  devices: [...devices],
  sheets: [],
  paths: paths.map(pathOf),
});

export const rated = (volts: number, current: 'AC' | 'DC' = 'DC'): Rating => ({ volts, current });

export const relay = (name: string, poles = 4, rating = rated(24)): Device => ({
  kind: 'relay',
  name,
  poles,
  rating,
});

export const latching = (name: string, poles = 4, rating = rated(24)): Device => ({
  kind: 'latching-relay',
  name,
  poles,
  rating,
});

export const lamp = (name: string, rating = rated(24), watts = 2): Device => ({
  kind: 'lamp',
  name,
  watts,
  rating,
});

/** A push-button with makes 13-14, 33-34… and breaks 21-22, 41-42… */
export const button = (name: string): Device => ({
  kind: 'push-button',
  name,
  contacts: [
    { form: 'make', terminals: ['13', '14'] },
    { form: 'break', terminals: ['21', '22'] },
    { form: 'make', terminals: ['33', '34'] },
    { form: 'break', terminals: ['41', '42'] },
  ],
});
