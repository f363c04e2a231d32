/** What the circuits teach must not hurt anybody who does as they do. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Act, Fault, Scenario } from '../../shared/scenario.ts';
import { families, familyOf, free, generate } from '../../src/generator/index.ts';
import { plants } from '../../src/generator/vocabulary/index.ts';
import { solve } from '../../src/solver/index.ts';
import { mixedRelays } from '../support/extra-low.ts';

const SEEDS = 12;

const circuitsOf = (family: string): Circuit[] => {
  const { min, max } = familyOf(family)!.size;
  return Array.from({ length: max - min + 1 }, (_, index) => min + index).flatMap((size) =>
    Array.from({ length: SEEDS }, (_, seed) => generate({ family, size, seed: `safe ${seed}` })).flatMap(
      (made) => (made.ok ? [made.accepted.draft.circuit] : []),
    ),
  );
};

const litIn = (circuit: Circuit, scenario: Partial<Scenario>): string[] => {
  const { lamps } = solve(circuit, { start: 'live', faults: [], acts: [], ...scenario }).solution;
  // Lamps with a number alone say nothing of the plant.
  return circuit.devices
    .flatMap(({ name, text }) => (lamps[name] === 'lit' && !/^Lamp \d+$/.test(text ?? '') ? [name] : []))
    .sort();
};

const fieldContacts = (circuit: Circuit) =>
  circuit.devices.filter((device) => /^-B/.test(device.name) && 'contacts' in device);

/** The first path that goes through a device and a coil: its sensing chain. */
const chainOf = (circuit: Circuit, name: string) =>
  circuit.paths.find(
    ({ steps }) =>
      steps.some(({ device }) => device === name) &&
      steps.some(({ enter, leave }) => enter === 'A1' && leave === 'A2'),
  )!.steps;

const colourOf = (circuit: Circuit, name: string): string | undefined => {
  const device = circuit.devices.find((each) => each.name === name)!;
  return 'colour' in device ? device.colour : undefined;
};

// Energised to be well: a failure of the circuit shows as the fault does (IEC 60204-1, 9.4.1, from memory; common practice).
describe('a fault relay that is energised while all is well', () => {
  it('shows a broken wire and an open coil as it shows the fault: the lamp for well is out, and no other comes but that of the fault', () => {
    let compared = 0;
    for (const circuit of circuitsOf('healthy-relay')) {
      for (const sensor of fieldContacts(circuit)) {
        const chain = chainOf(circuit, sensor.name);
        const contact = chain.find(({ device }) => device === sensor.name)!;
        const coil = chain.find(({ enter, leave }) => enter === 'A1' && leave === 'A2')!;
        const acted: Act = { kind: 'make', device: sensor.name };
        const breaks: Act = { kind: 'break', device: sensor.name };
        const first = 'contacts' in sensor ? sensor.contacts[0]! : undefined;
        const fault = litIn(circuit, {
          acts: [first && 'form' in first && first.form === 'break' ? breaks : acted],
        });
        const faults: Fault[] = [
          { kind: 'loose', at: `${contact.device}:${contact.enter}` },
          { kind: 'loose', at: `${contact.device}:${contact.leave}` },
          { kind: 'loose', at: `${coil.device}:A1` },
          { kind: 'open', from: `${coil.device}:A1`, to: `${coil.device}:A2` },
        ];
        const well = litIn(circuit, {});
        const gone = well.filter((lamp) => !fault.includes(lamp));
        const come = fault.filter((lamp) => !well.includes(lamp));
        expect(
          gone.map((lamp) => colourOf(circuit, lamp)),
          circuit.title,
        ).toEqual(['green']);
        expect(come).toHaveLength(1);
        expect(['red', 'yellow', 'amber']).toContain(colourOf(circuit, come[0]!));
        for (const each of faults) expect(litIn(circuit, { faults: [each] }), circuit.title).toEqual(fault);
        compared += faults.length;
      }
    }
    expect(compared).toBeGreaterThan(1000);
  });
});

// An alarm is an abnormal condition that somebody has to do something about (ISA-18.1 and 18.2, from memory).
describe('an alarm', () => {
  const faults = plants.flatMap(({ signals }) =>
    signals.filter(({ acted }) => ['abnormal', 'emergency'].includes(acted.meaning)),
  );
  const texts = (word: 'acted' | 'rest'): ReadonlySet<string> =>
    new Set(
      faults.flatMap((signal) =>
        [1, 2, 3, 4, 5, 6].map((number) => signal[word].text.replace('#', String(number))),
      ),
    );

  it.each([
    // A relay that calls is fed on the fault.
    { family: 'acknowledged-alarm', named: { make: texts('acted'), break: texts('rest') } },
    // Over a break contact it is fed while all is well, and calls when it drops out.
    { family: 'flashing', named: { make: texts('acted'), break: texts('acted') } },
  ])(
    'of $family comes on a fault: by what its contacts act on, and whether its relay is fed on it or drops out',
    ({ family, named }) => {
      for (const circuit of circuitsOf(family)) {
        for (const sensor of fieldContacts(circuit)) {
          const [first] = 'contacts' in sensor ? sensor.contacts : [];
          const form = first && 'form' in first && first.form === 'break' ? 'break' : 'make';
          expect(named[form].has(sensor.text!), `${circuit.title}: ${form} ${sensor.text}`).toBe(true);
        }
        for (const device of circuit.devices)
          if (device.kind === 'lamp' && /: alarm$/.test(device.text ?? ''))
            expect(['red', 'yellow', 'amber'], device.text).toContain(device.colour);
      }
    },
  );
});

describe('what a selector passes over for setting up', () => {
  it('is a condition that hurts nobody: never a guard, a mooring, a lock or an end of travel', () => {
    const conditions = plants.flatMap(({ chains }) => chains.flatMap((chain) => chain.conditions));
    const passed = conditions.filter((each) => each.passable);
    const passable = new Set(passed.map(({ actedBy }) => actedBy));
    expect(
      passed
        .flatMap(({ text, actedBy }) => [text, actedBy])
        .filter((text) => /guard|hood|hatch|moored|lock|rope|barrier|visor|stop|shut|at end/i.test(text)),
    ).toEqual([]);
    let found = 0;
    for (const circuit of circuitsOf('permissive')) {
      const selector = circuit.devices.find(({ kind }) => kind === 'selector');
      if (!selector) continue;
      const [over] = endsAt(circuit, selector.name);
      const beside = fieldContacts(circuit).filter(({ name }) => endsAt(circuit, name).includes(over!));
      expect(
        beside.map(({ text }) => passable.has(text!)),
        circuit.title,
      ).toEqual([true]);
      found++;
    }
    expect(found).toBeGreaterThan(20);
  });
});

describe('a contact in a permissive chain', () => {
  it('is named for what actuates it: the lamp that says the condition holds goes out, or on, when that comes', () => {
    const lampOf = new Map(
      plants.flatMap(({ chains }) =>
        chains.flatMap(({ conditions }) => conditions.map(({ actedBy, text }) => [actedBy, text] as const)),
      ),
    );
    let compared = 0;
    for (const circuit of circuitsOf('permissive'))
      for (const sensor of fieldContacts(circuit)) {
        const [first] = 'contacts' in sensor ? sensor.contacts : [];
        const breaks = first && 'form' in first && first.form === 'break';
        expect(lampOf.has(sensor.text!), `${circuit.title} ${sensor.text}`).toBe(true);
        expect(breaks, `${circuit.title} ${sensor.text}`).toBe(lampOf.get(sensor.text!) !== sensor.text);
        const lamp = circuit.devices.find(
          ({ kind, text }) => kind === 'lamp' && text === lampOf.get(sensor.text!),
        );
        if (!lamp) continue;
        const acted: Act = { kind: breaks ? 'break' : 'make', device: sensor.name };
        expect(litIn(circuit, {}).includes(lamp.name), lamp.text).toBe(breaks);
        expect(litIn(circuit, { acts: [acted] }).includes(lamp.name), lamp.text).toBe(!breaks);
        compared++;
      }
    expect(compared).toBeGreaterThan(20);
  });
});

/** The conductors at the two ends of each of a device's hops, as the terminals on them. */
function endsAt(circuit: Circuit, name: string): readonly string[] {
  const groups = new Map<string, Set<string>>();
  const group = (terminal: string): Set<string> => {
    const known = groups.get(terminal);
    if (known) return known;
    const made = new Set([terminal]);
    groups.set(terminal, made);
    return made;
  };
  for (const { steps } of circuit.paths)
    for (let at = 1; at < steps.length; at++) {
      const before = steps[at - 1]!;
      const one = group(`${before.device}:${before.leave ?? before.enter}`);
      const other = group(`${steps[at]!.device}:${steps[at]!.enter}`);
      if (one === other) continue;
      for (const terminal of other) {
        one.add(terminal);
        groups.set(terminal, one);
      }
    }
  const hops = circuit.paths.flatMap(({ steps }) =>
    steps.filter(({ device, leave }) => device === name && leave !== undefined),
  );
  return hops.map(({ enter, leave }) =>
    [enter, leave].map((end) => [...group(`${name}:${end}`)].sort().join()).join(' to '),
  );
}

describe('a lamp on one leg of a relay', () => {
  it.each(['make-only', 'break-only'])('of %s is lit while what it says is so', (family) => {
    let compared = 0;
    for (const circuit of circuitsOf(family)) {
      for (const sensor of fieldContacts(circuit)) {
        const lamp = circuit.devices.find(({ kind, text }) => kind === 'lamp' && text === sensor.text);
        if (!lamp) continue;
        const [first] = 'contacts' in sensor ? sensor.contacts : [];
        const breaks = first && 'form' in first && first.form === 'break';
        const acted: Act = { kind: breaks ? 'break' : 'make', device: sensor.name };
        expect(litIn(circuit, {}), `${circuit.title} ${lamp.text}`).not.toContain(lamp.name);
        expect(litIn(circuit, { acts: [acted] }), `${circuit.title} ${lamp.text}`).toContain(lamp.name);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(10);
  });
});

// ISO 13851 is for machines that catch hands; what it asks for is done by a monitored module (common practice, no source).
describe('a two-hand control', () => {
  it('is at a press, a clamp or a guillotine, and its title says what a real one has', () => {
    for (const circuit of circuitsOf('two-hand')) {
      expect(circuit.title).toMatch(/press|clamp|guillotine/);
      expect(circuit.title).toMatch(/a real one has a monitored module \(ISO 13851\)$/);
    }
  });
});

// In star a motor has a third of its torque: what has its load on from the first turn doesn't come up (common practice, no source).
describe('a star-delta start', () => {
  it('is of a machine that comes up to speed without its load', () => {
    const unloaded = plants.flatMap(({ drives }) =>
      drives.flatMap(({ thing, startsUnloaded }) =>
        startsUnloaded ? [thing.replace(' #', '').toLowerCase()] : [],
      ),
    );
    for (const circuit of circuitsOf('star-delta'))
      expect(
        unloaded.some((thing) => circuit.title!.includes(thing)),
        circuit.title,
      ).toBe(true);
    for (const { name, drives } of plants)
      expect(
        drives.some(({ startsUnloaded }) => startsUnloaded),
        name,
      ).toBe(true);
  });
});

describe('a timer', () => {
  it('starts on what its contact says, whether that makes or breaks', () => {
    let breaks = 0;
    const signals = new Set(plants.flatMap(({ startsLate }) => startsLate.map(({ signal }) => signal)));
    const opposites = new Set(plants.flatMap(({ startsLate }) => startsLate.map(({ without }) => without)));
    for (const circuit of circuitsOf('on-delay')) {
      for (const sensor of fieldContacts(circuit)) {
        const words = sensor.text!.replace(/[1-6]/, '#');
        const chain = chainOf(circuit, sensor.name);
        const coil = chain.find(({ enter, leave }) => enter === 'A1' && leave === 'A2');
        // A contact chained behind another timer's is started by both.
        if (!coil || chain.some(({ device }) => /^-K/.test(device) && device !== coil.device)) continue;
        const { enter } = chain.find(({ device }) => device === sensor.name)!;
        const byBreak = enter.endsWith('1') || enter.endsWith('2');
        expect((byBreak ? opposites : signals).has(words), `${circuit.title}: ${sensor.text}`).toBe(true);
        if (byBreak) breaks++;
      }
    }
    expect(breaks).toBeGreaterThan(10);
  });
});

// What a panel has (common practice, no source; IEC 61140 for the limits of extra-low voltage, from memory).
describe('a supply', () => {
  it('has a fuse or breaker as a panel would have in front of it, and none of 3.3 V has a breaker', () => {
    const allowed: Readonly<Record<string, readonly [number, number]>> = {
      '3.3 DC': [0.1, 0.5],
      '24 AC': [2, 6],
      '24 DC': [0.5, 6],
      '48 DC': [2, 4],
      '110 AC': [1, 4],
      '230 AC': [1, 4],
    };
    const seen = new Set<string>();
    for (const family of ['two-supplies', 'healthy-relay', 'seal-in', 'free'])
      for (const circuit of circuitsOf(family))
        for (const { name, volts, current } of circuit.supplies) {
          const [, step] = circuit.paths.find(({ steps }) => steps[0]!.device === name)!.steps;
          const protection = circuit.devices.find((each) => each.name === step!.device)!;
          const amps = 'amps' in protection ? protection.amps! : NaN;
          const [least, most] = allowed[`${volts} ${current}`]!;
          expect(amps, `${circuit.title} ${name}`).toBeGreaterThanOrEqual(least);
          expect(amps, `${circuit.title} ${name}`).toBeLessThanOrEqual(most);
          if (volts < 12) expect(protection.kind).toBe('fuse');
          seen.add(`${volts} ${current}`);
        }
    expect([...seen].sort()).toEqual(Object.keys(allowed).sort());
  });

  it('of extra-low voltage has no pole of a relay beside one of 110 or 230 V', () => {
    for (const family of ['two-supplies', 'free', 'healthy-relay'])
      for (const circuit of circuitsOf(family)) expect(mixedRelays(circuit), circuit.title).toEqual([]);
  });

  it('of 3.3 V is switched by contacts made for low level: a note says so behind the name of each relay that switches it, and of no other', () => {
    const circuits = circuitsOf('two-supplies');
    let [noted, plain] = [0, 0];
    for (const { devices, supplies, paths, title } of circuits) {
      const low = supplies.find(({ volts }) => volts < 12);
      // The inputs' own supply feeds nothing but them, each through one contact.
      const switching = new Set(
        paths.flatMap(({ steps }) =>
          low &&
          steps.some(({ device }) => devices.some(({ kind, name }) => kind === 'inputs' && name === device))
            ? steps.map(({ device }) => device)
            : [],
        ),
      );
      for (const { kind, name, text } of devices) {
        if (kind !== 'relay') continue;
        if (switching.has(name)) {
          expect(text, title).toMatch(/^[A-Z][a-z ]+( [1-6])?: gold contacts$/);
          noted++;
        } else {
          expect(text ?? '', title).not.toMatch(/gold|low level/);
          plain++;
        }
      }
    }
    expect(noted).toBeGreaterThan(60);
    expect(plain).toBeGreaterThan(60);
  });

  // Two earth faults in an unearthed circuit start what nobody started; one alone has to be seen (IEC 60204-1, 9.4.3, from memory).
  it('of 110 or 230 V has one side earthed: nothing here watches the insulation of one that has not', () => {
    let high = 0;
    for (const { id } of [...families, free])
      for (const { supplies, title } of circuitsOf(id))
        for (const { volts, current, earthed, name } of supplies) {
          if (volts <= (current === 'DC' ? 120 : 50)) continue;
          expect(earthed, `${title} ${name}`).toBe(true);
          high++;
        }
    expect(high).toBeGreaterThan(100);
  });
});
