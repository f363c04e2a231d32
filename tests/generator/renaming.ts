/** The same circuit written otherwise, and circuits with one thing changed. */
import type { Circuit, Device, Path, Step } from '../../shared/circuit.ts';
import type { Random } from '../../src/generator/index.ts';

const POLED = new Set(['relay', 'latching-relay', 'on-delay', 'off-delay', 'supplied-off-delay', 'flasher']);

/** New names, new texts, other colours, another order of everything, poles exchanged, some paths traced backwards. */
export function rewritten(random: Random, circuit: Circuit): Circuit {
  const numbers = random.shuffle(Array.from({ length: circuit.devices.length }, (_, index) => index + 1));
  const names = new Map<string, string>(
    circuit.devices.map(({ name }, index) => [name, `${name.replace(/[0-9]/g, '')}${numbers[index]}`]),
  );
  const letters = random.shuffle('ABCDEFGH'.split(''));
  for (const [index, { name }] of circuit.supplies.entries()) names.set(name, letters[index]!);
  const poles = new Map<string, readonly number[]>();
  for (const device of circuit.devices) {
    if ('poles' in device && POLED.has(device.kind))
      poles.set(device.name, random.shuffle(Array.from({ length: device.poles }, (_, pole) => pole + 1)));
  }
  const terminal = (device: string, name: string): string => {
    const order = poles.get(device);
    if (!order || !/^[1-9][0-9]$/.test(name)) return name;
    return `${order[Number(name[0]) - 1]}${name[1]}`;
  };
  const step = ({ device, enter, leave }: Step): Step => ({
    device: names.get(device)!,
    enter: terminal(device, enter),
    ...(leave === undefined ? {} : { leave: terminal(device, leave) }),
  });
  const backwards = (steps: readonly Step[]): Step[] =>
    [...steps]
      .reverse()
      .map(({ device, enter, leave }) =>
        leave === undefined ? { device, enter } : { device, enter: leave, leave: enter },
      );
  const device = (each: Device): Device => {
    const { text, ...rest } = { text: '', ...each };
    const coloured =
      'colour' in rest ? { ...rest, colour: random.pick(['white', 'grey', 'black', 'blue'] as const) } : rest;
    return { ...coloured, name: names.get(each.name)!, text: `${text} again` } as Device;
  };
  const paths: Path[] = circuit.paths.map(({ steps }) => ({
    sheet: 7,
    steps: random.chance(0.3) ? backwards(steps.map(step)) : steps.map(step),
  }));
  return {
    title: 'Something else',
    supplies: random.shuffle(
      circuit.supplies.map((supply) => ({ ...supply, name: names.get(supply.name)!, text: 'Else' })),
    ),
    devices: random.shuffle(circuit.devices.map(device)),
    sheets: [{ number: 7 }],
    paths: random.shuffle(paths),
  };
}

/** The circuit with one contact exchanged for the other leg, one wire moved, one path left out or one rating changed. */
export function changed(random: Random, circuit: Circuit): Circuit {
  const paths = circuit.paths.map(({ sheet, steps }) => ({ sheet, steps: [...steps] }));
  const pathAt = random.int(0, paths.length - 1);
  const { steps } = paths[pathAt]!;
  switch (random.int(0, 3)) {
    case 0: {
      const legs = paths.flatMap((path, at) =>
        path.steps.flatMap((step, index) =>
          /^-K/.test(step.device) && /^[1-4][1-4]$/.test(step.leave ?? '') ? [[at, index] as const] : [],
        ),
      );
      if (legs.length === 0) break;
      const [at, index] = random.pick(legs);
      const step = paths[at]!.steps[index]!;
      const leave = step.leave!.endsWith('4') ? `${step.leave![0]}2` : `${step.leave![0]}4`;
      paths[at]!.steps[index] = { ...step, leave };
      break;
    }
    case 1: {
      // The path ends at some other device's terminal instead.
      const target = random.pick(random.pick(paths).steps);
      steps[steps.length - 1] = { device: target.device, enter: target.enter };
      break;
    }
    case 2:
      paths.splice(pathAt, 1);
      break;
    default: {
      const rated = circuit.devices
        .map((device, index) => ('rating' in device ? index : -1))
        .filter((index) => index >= 0);
      const chosen = random.pick(rated);
      const devices = circuit.devices.map((device, index) =>
        index === chosen && 'rating' in device
          ? { ...device, rating: { ...device.rating, volts: 42 } }
          : device,
      );
      return { ...circuit, devices };
    }
  }
  return { ...circuit, paths };
}
