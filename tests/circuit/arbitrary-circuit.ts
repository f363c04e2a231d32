/** Random sound circuits over every kind of device, for properties of reader and writer. */
import fc from 'fast-check';
import { type Circuit, colour, type Device, type DeviceKind, type Step } from '../../shared/circuit.ts';
import { supplyTerminals } from '../../src/circuit/anatomy/index.ts';
import { numbersAt } from '../../src/circuit/contact-numbers.ts';
import { insideOf } from '../../src/circuit/inside.ts';

const AWKWARD = [
  '"',
  '\\',
  '#',
  ' ',
  '\u00a0',
  ';',
  ':',
  '-',
  'é',
  '😀',
  '\u{1f469}\u200d\u{1f527}',
  'ß',
  '漢',
  'a',
  '7',
];

/** Texts without control characters, awkward ones among them. */
const textOf = (most: number) =>
  fc
    .oneof(
      fc.string({ unit: fc.constantFrom(...AWKWARD), maxLength: most / 5 }),
      fc.string({ unit: 'grapheme', maxLength: most / 4 }),
      fc.constantFrom('Start', 'Fan running', '', ' padded ', '"quoted"', 'back\\slash', '\ufeffmark'),
    )
    .filter((text) => text.length <= most && !/[\p{Cc}\p{Zl}\p{Zp}]/u.test(text));

const optional = <T>(name: string, arbitrary: fc.Arbitrary<T>) =>
  fc.option(arbitrary, { nil: undefined }).map((value) => (value === undefined ? {} : { [name]: value }));

const number = (most: number) =>
  fc.oneof(
    fc.integer({ min: 1, max: most }),
    fc.constantFrom(0.5, 3.3, 24),
    fc.double({ min: 1e-7, max: most, noNaN: true }),
  );
const rating = fc.record({ volts: number(1000), current: fc.constantFrom('AC' as const, 'DC' as const) });
const poles = (most: number) => fc.integer({ min: 1, max: most });
const form = fc.constantFrom('make' as const, 'break' as const, 'changeover' as const);

/** Contacts with the usual numbers, special ones, or names that only a hyphen in the wrong place could confuse. */
const contacts = (least = 1) =>
  fc
    .array(fc.tuple(form, fc.constantFrom('usual', 'special', 'named')), { minLength: least, maxLength: 12 })
    .map((list) =>
      list.map(([kind, numbering], index) => {
        const usual = numbersAt(kind, index + 1);
        const letters = ['L', 'M', 'N'].slice(0, usual.length);
        const special = { make: ['7', '8'], break: ['5', '6'], changeover: ['5', '6', '8'] }[kind];
        const terminals = {
          usual,
          special: special.map((digit) => `${index + 1}${digit}`),
          named: letters.map((letter, at) => `${letter}${index}${['+', '-', ''][at]}`),
        }[numbering as 'usual' | 'special' | 'named'];
        return { form: kind, terminals };
      }),
    );

const positionName = fc.constantFrom('Off', 'Hand', 'Auto', '0', '1', '24', 'Make', 'V', 'poles', 'x9');
const selector = fc
  .tuple(fc.uniqueArray(positionName, { minLength: 2, maxLength: 6 }), contacts())
  .chain(([positions, list]) =>
    fc
      .tuple(...list.map(() => fc.option(fc.subarray(positions, { minLength: 1 }), { nil: undefined })))
      .map((chosen) => ({
        positions,
        contacts: list.map((spec, index) =>
          chosen[index] === undefined ? spec : { ...spec, positions: chosen[index] },
        ),
      })),
  );

const pointed = (extra: Record<string, fc.Arbitrary<unknown>>) =>
  fc
    .integer({ min: 1, max: 16 })
    .chain((count) =>
      fc.record({ count: fc.constant(count), points: fc.array(textOf(40), { maxLength: count }), ...extra }),
    );

const merged = (...parts: fc.Arbitrary<object>[]) =>
  fc.tuple(...parts).map((values) => Object.assign({}, ...values) as object);

const colours = optional('colour', fc.constantFrom(...colour.options));
const watts = optional('watts', number(100_000));
const amps = optional('amps', number(1000));
const seconds = number(86_400);
const contactsOnly = fc.record({ contacts: contacts() });
const ohmic = merged(watts, fc.record({ rating }));

/** Per kind, all fields but kind, name and text. */
const BODIES: Readonly<Record<DeviceKind, fc.Arbitrary<object>>> = {
  relay: fc.record({ poles: poles(4), rating }),
  contactor: fc.record({
    mains: fc.integer({ min: 0, max: 4 }),
    contacts: contacts(0),
    rating,
  }),
  'on-delay': fc.record({ seconds, poles: poles(2), rating }),
  'off-delay': fc.record({ seconds, poles: poles(2), rating }),
  'supplied-off-delay': fc.record({ seconds, poles: poles(2), rating }),
  flasher: fc.record({ on: seconds, off: seconds, poles: poles(2), rating }),
  'latching-relay': fc.record({ poles: poles(4), rating }),
  'push-button': merged(contactsOnly, colours),
  'emergency-stop': contactsOnly,
  selector,
  'field-contact': contactsOnly,
  'limit-switch': contactsOnly,
  'float-switch': contactsOnly,
  overload: fc.constant({}),
  fuse: merged(fc.record({ poles: poles(3) }), amps),
  breaker: merged(fc.record({ poles: poles(3) }), amps),
  isolator: fc.record({ poles: poles(4) }),
  lamp: merged(ohmic, colours),
  sounder: ohmic,
  valve: ohmic,
  motor: fc.record({ terminals: fc.constantFrom(3, 6), volts: number(1000) }),
  inputs: pointed({ type: fc.constantFrom('3.3V', '24V-1', '24V-2', '24V-3') }),
  outputs: pointed({}),
  terminals: fc.record({ count: fc.integer({ min: 1, max: 60 }) }),
};

export const KINDS = Object.keys(BODIES) as DeviceKind[];

export const deviceOfKind = (kind: DeviceKind): fc.Arbitrary<Device> =>
  fc
    .tuple(BODIES[kind], optional('text', textOf(80)))
    .map(([body, text]) => ({ kind, name: '-X1', ...text, ...body }) as Device);

const anyDevice = fc.constantFrom(...KINDS).chain(deviceOfKind);

const supplies = fc
  .uniqueArray(fc.constantFrom('A', 'B', 'C', 'Z'), { minLength: 1, maxLength: 4 })
  .chain((names) =>
    fc.tuple(
      ...names.map((name) =>
        fc
          .tuple(
            fc.record({
              name: fc.constant(name),
              volts: number(1000),
              current: fc.constantFrom('AC' as const, 'DC' as const, '3AC' as const),
              earthed: fc.boolean(),
            }),
            optional('text', textOf(80)),
          )
          .map(([supply, text]) => ({ ...supply, ...text })),
      ),
    ),
  );

const sheets = fc
  .uniqueArray(fc.integer({ min: 1, max: 99 }), { maxLength: 4 })
  .chain((numbers) =>
    fc.tuple(...numbers.map((n) => optional('title', textOf(80)).map((title) => ({ number: n, ...title })))),
  );

function stopsOf(devices: readonly Device[], circuitSupplies: Circuit['supplies']): Step[] {
  return [
    ...circuitSupplies.flatMap((supply) =>
      supplyTerminals(supply).map((enter) => ({ device: supply.name, enter })),
    ),
    ...devices.flatMap((device) => {
      const { terminals, group } = insideOf(device);
      return terminals.flatMap((enter) => [
        { device: device.name, enter },
        ...terminals
          .filter((leave) => leave !== enter && group.get(leave) === group.get(enter))
          .slice(0, 3)
          .map((leave) => ({ device: device.name, enter, leave })),
      ]);
    }),
  ];
}

/** Drops stops that would join a terminal to itself. */
function withoutLoops(steps: readonly Step[]): Step[] {
  const kept: Step[] = [];
  for (const step of steps) {
    const last = kept.at(-1);
    const from = last && (last.leave ?? last.enter);
    if (last?.device !== step.device || from !== step.enter) kept.push(step);
  }
  return kept;
}

export const anyCircuit: fc.Arbitrary<Circuit> = fc
  .tuple(
    optional('title', textOf(120)),
    supplies,
    fc.array(fc.tuple(anyDevice, fc.constantFrom('K', 'S', 'QA', 'XYZ')), { maxLength: 8 }),
    sheets,
    fc.array(fc.tuple(fc.nat(), fc.array(fc.nat(), { minLength: 2, maxLength: 8 })), { maxLength: 8 }),
  )
  .map(([title, circuitSupplies, drawn, listed, picks]) => {
    const devices = drawn.map(
      ([device, letters], index) => ({ ...device, name: `-${letters}${index}` }) as Device,
    );
    const stops = stopsOf(devices, circuitSupplies);
    const paths =
      listed.length === 0
        ? []
        : picks.flatMap(([sheet, picked]) => {
            const steps = withoutLoops(picked.map((at) => stops[at % stops.length]!));
            return steps.length < 2 ? [] : [{ sheet: listed[sheet % listed.length]!.number, steps }];
          });
    return { ...title, supplies: circuitSupplies, devices, sheets: listed, paths };
  });
