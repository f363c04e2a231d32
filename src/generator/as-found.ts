/**
 * Wiring that isn't what its words say, as a fitter comes upon it: the mistakes that are made at a relay, each in the wiring alone. Somebody
 * who answers from the words goes wrong here, and only reading the drawing tells where.
 */
import type { Circuit, Device, Step } from '../../shared/circuit.ts';
import { anatomyOf, contactOf, readAs } from '../circuit/index.ts';
import type { Random } from './random.ts';
import type { Draft } from './types.ts';

type Paths = Circuit['paths'];
type Mistake = (circuit: Circuit, random: Random) => Paths | undefined;

/** The same paths with other stops. */
const rewired = (paths: Paths, change: (step: Step) => Step): Paths =>
  paths.map((path) => ({ ...path, steps: path.steps.map(change) }));

const joins = ({ paths }: Circuit, device: string, terminal: string): boolean =>
  paths.some(({ steps }) =>
    steps.some((step) => step.device === device && (step.enter === terminal || step.leave === terminal)),
  );

/** Break leg and make leg of a changeover exchanged. */
const legsExchanged: Mistake = (circuit, random) => {
  const poles = circuit.devices.flatMap((device) => {
    const { contacts, mechanisms } = anatomyOf(device);
    if (mechanisms.some(({ drive }) => drive === 'act' || drive === 'feed')) return [];
    return contacts.flatMap(({ changeover, form, pole, to }) => {
      const other = contacts.find((each) => each.pole === pole && each.form === 'make');
      if (!changeover || form !== 'break' || !other) return [];
      const used = joins(circuit, device.name, to) || joins(circuit, device.name, other.to);
      return used ? [{ device: device.name, rest: to, made: other.to }] : [];
    });
  });
  if (poles.length === 0) return undefined;
  const { device, rest, made } = random.pick(poles);
  const other = (terminal: string): string =>
    terminal === rest ? made : terminal === made ? rest : terminal;
  return rewired(circuit.paths, (step) =>
    step.device === device
      ? {
          ...step,
          enter: other(step.enter),
          ...(step.leave === undefined ? {} : { leave: other(step.leave) }),
        }
      : step,
  );
};

const isLamp = (device: Device): boolean =>
  anatomyOf(device).loads.some(({ role }) => readAs(role) === 'lamp');

/** Two lamps of one kind exchanged. */
const lampsExchanged: Mistake = (circuit, random) => {
  const lamps = circuit.devices.flatMap((device) =>
    'rating' in device && isLamp(device) ? [{ name: device.name, rating: device.rating }] : [],
  );
  const [one] = random.sample(lamps, 1);
  const alike = lamps.filter(
    ({ name, rating }) =>
      name !== one!.name && rating.volts === one!.rating.volts && rating.current === one!.rating.current,
  );
  if (!one || alike.length === 0) return undefined;
  const other = random.pick(alike);
  const name = (device: string): string =>
    device === one.name ? other.name : device === other.name ? one.name : device;
  return rewired(circuit.paths, (step) => ({ ...step, device: name(step.device) }));
};

/** The terminals at which a supply leaves its breakers and fuses, by the supply's first letter on a path. */
const fedFrom = ({ paths, devices }: Circuit): Step[] => {
  const feeding = new Set(
    devices
      .filter((device) => anatomyOf(device).mechanisms.some(({ drive }) => drive === 'feed'))
      .map(({ name }) => name),
  );
  return paths.flatMap(({ steps: [pole, protection] }) =>
    pole && protection?.leave !== undefined && !pole.device.startsWith('-') && feeding.has(protection.device)
      ? [{ device: protection.device, enter: protection.leave }]
      : [],
  );
};

/** A way beside others led back too far: to the fuse, round all that stands before it. A seal round the stop is one of these. */
const ledRound: Mistake = (circuit, random) => {
  const feeds = fedFrom(circuit);
  if (feeds.length !== 1) return undefined;
  const [feed] = feeds;
  const ways = circuit.paths.flatMap(({ steps: [first, second] }, index) =>
    first?.device.startsWith('-') &&
    first.leave === undefined &&
    second?.leave !== undefined &&
    first.device !== feed!.device
      ? [index]
      : [],
  );
  if (ways.length === 0) return undefined;
  const way = random.pick(ways);
  return circuit.paths.map((path, index) =>
    index === way ? { ...path, steps: [feed!, ...path.steps.slice(1)] } : path,
  );
};

const MISTAKES: readonly Mistake[] = [lampsExchanged, legsExchanged, ledRound];
/** A second mistake is rarer. */
const ANOTHER = 0.4;

/**
 * Whether two coils lock each other out, each by a break contact on the other's path. Such a lock stays as it was: nobody is to get
 * used to drawings in which both directions can be in at once.
 */
function hasLock({ devices, paths }: Circuit): boolean {
  const anatomies = new Map(devices.map((device) => [device.name, anatomyOf(device)]));
  const keeps = new Set(
    paths.flatMap(({ steps }) => {
      const coil = steps.find(({ device, enter }) =>
        anatomies.get(device)?.loads.some(({ mechanism, from }) => mechanism !== undefined && from === enter),
      );
      const breaks = steps.filter((step) => contactOf({ devices }, step)?.form === 'break');
      return coil ? breaks.map(({ device }) => `${device} ${coil.device}`) : [];
    }),
  );
  return [...keeps].some((pair) => keeps.has(pair.split(' ').reverse().join(' ')));
}

/** The draft as somebody may have wired it; undefined where it has nothing to be wired wrongly. */
export function wiredOtherwise(draft: Draft, random: Random): Draft | undefined {
  let { circuit } = draft;
  const mistakes = hasLock(circuit) ? [lampsExchanged] : random.shuffle(MISTAKES);
  const wanted = random.chance(ANOTHER) ? 2 : 1;
  let made = 0;
  for (const mistake of mistakes) {
    const paths = made < wanted ? mistake(circuit, random) : undefined;
    if (!paths) continue;
    circuit = { ...circuit, paths };
    made++;
  }
  return made > 0 ? { ...draft, circuit: { ...circuit, asFound: true } } : undefined;
}
