import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { families, free, randomOf } from '../../src/generator/index.ts';
import { BUTTON_COLOURS, LAMP_COLOURS, plants } from '../../src/generator/vocabulary/index.ts';
import { vocabularyOf } from './vocabulary-list.ts';

const drafts = [...families, free].flatMap((family) =>
  Array.from({ length: 30 }, (_, index) =>
    family.draft(randomOf(`words-${index}`), { size: 1 + (index % family.size.max) }),
  ),
);
const devices = drafts.flatMap(({ circuit }) => circuit.devices);

describe('colours (IEC 60204-1, 10.2.1 and 10.3.2)', () => {
  it('of lamps: red emergency, yellow abnormal, green normal, blue mandatory, white neutral', () => {
    // Amber is the yellow of lamps in common use (common practice, no source).
    expect(LAMP_COLOURS).toEqual({
      emergency: ['red'],
      abnormal: ['yellow', 'amber'],
      normal: ['green'],
      mandatory: ['blue'],
      neutral: ['white'],
    });
  });

  it('of buttons: start never red, stop never green, reset blue, white, grey or black', () => {
    expect(BUTTON_COLOURS.start).not.toContain('red');
    expect(BUTTON_COLOURS.stop).not.toContain('green');
    const starting = new Set([...BUTTON_COLOURS.start, ...BUTTON_COLOURS['hold-to-run']]);
    expect(BUTTON_COLOURS.stop.filter((colour) => starting.has(colour))).toEqual([]);
    expect([...BUTTON_COLOURS.reset].sort()).toEqual(['black', 'blue', 'grey', 'white']);
    for (const device of devices) {
      if (device.kind !== 'push-button') continue;
      if (/^Start /.test(device.text!)) expect(device.colour).not.toBe('red');
      if (/^Stop /.test(device.text!)) expect(device.colour).not.toBe('green');
    }
  });
});

describe('the words on the drawings', () => {
  it('name every lamp, button and field contact, each text once on a drawing', () => {
    for (const { circuit } of drafts) {
      const lamps = circuit.devices.filter(({ kind }) => kind === 'lamp').map(({ text }) => text);
      expect(new Set(lamps).size, circuit.title).toBe(lamps.length);
    }
    for (const { kind, text, name } of devices)
      if (
        ['lamp', 'push-button', 'field-contact', 'limit-switch', 'float-switch', 'emergency-stop'].includes(
          kind,
        )
      )
        expect(text, name).toMatch(/\p{L}{2}/u);
  });

  it('are beside one kind of field contact wherever they stand: a door has a limit switch, a level a float', () => {
    const kinds = new Map<string, Set<string>>();
    for (const { kind, text } of devices) {
      if (!['field-contact', 'limit-switch', 'float-switch'].includes(kind)) continue;
      const words = text!.replace(/\d+/, '#');
      kinds.set(words, (kinds.get(words) ?? new Set()).add(kind));
    }
    expect([...kinds].filter(([, of]) => of.size > 1).map(([words]) => words)).toEqual([]);
    expect(kinds.size).toBeGreaterThan(100);
  });

  it('leave no place for a number open and fit beside a symbol', () => {
    for (const { text, name } of devices) {
      expect(text ?? '', name).not.toMatch(/[#"]/);
      expect((text ?? '').length, text).toBeLessThanOrEqual(48);
    }
    for (const { circuit } of drafts)
      expect(circuit.title).toMatch(/^(Nursery|Ice works|Ferry ramp|Flour line): /);
  });

  it('come from four plants, each with words for every family, and none of a heating plant', () => {
    expect(plants.map(({ id }) => id)).toEqual(['nursery', 'ice-works', 'ferry-ramp', 'flour-line']);
    const words = JSON.stringify(plants).toLowerCase();
    for (const word of ['boiler', 'burner', 'heating', 'radiator', 'furnace'])
      expect(words).not.toContain(word);
    // What burns or explodes has a monitored control unit of its own, and is no matter for plain contacts (common practice, no source).
    for (const word of [/\bgas\b/, /spark/, /flame/, /\bignit/, /\bfire\b/, /explos/])
      expect(words).not.toMatch(word);
    for (const plant of plants) {
      expect(plant.signals.length).toBeGreaterThanOrEqual(12);
      for (const list of [
        plant.drives,
        plant.movements,
        plant.pairs,
        plant.sumps,
        plant.chains,
        plant.trios,
        plant.startsLate,
        plant.runsOn,
      ])
        expect(list.length).toBeGreaterThan(1);
    }
  });
});

describe('designations and protection', () => {
  it('are letters of old practice (IEC 60750) with numbers that do not always begin at one', () => {
    const letters: Readonly<Record<string, string>> = {
      relay: 'K',
      contactor: 'K',
      'on-delay': 'K',
      'off-delay': 'K',
      'supplied-off-delay': 'K',
      flasher: 'K',
      'latching-relay': 'K',
      lamp: 'H',
      sounder: 'H',
      'push-button': 'S',
      selector: 'S',
      'emergency-stop': 'S',
      'field-contact': 'B',
      'limit-switch': 'B',
      'float-switch': 'B',
      breaker: 'F',
      fuse: 'F',
      overload: 'F',
      valve: 'Y',
      motor: 'M',
      inputs: 'A',
      terminals: 'X',
    };
    for (const { kind, name } of devices) expect(name, kind).toMatch(new RegExp(`^-${letters[kind]}[0-9]+$`));
    const lowest = drafts.map(({ circuit }) =>
      Math.min(
        ...circuit.devices.filter(({ kind }) => kind === 'relay').map(({ name }) => Number(name.slice(2))),
      ),
    );
    expect(lowest.filter((number) => number > 1 && number < Infinity).length).toBeGreaterThan(
      drafts.length / 4,
    );
  });

  it('have a fuse or breaker in every supply', () => {
    for (const { circuit } of drafts) {
      const protective = new Set(
        circuit.devices.filter(({ kind }) => kind === 'fuse' || kind === 'breaker').map(({ name }) => name),
      );
      for (const supply of circuit.supplies) {
        const feed = circuit.paths.find(
          ({ steps }) => steps[0]!.device === supply.name && protective.has(steps[1]?.device ?? ''),
        );
        expect(feed, `${circuit.title}: ${supply.name}`).toBeDefined();
      }
    }
  });
});

describe('what a signal means', () => {
  const signals = plants.flatMap((plant) => plant.signals);
  const bad = ['abnormal', 'emergency'];

  it('is said of both its states, and a broken wire has to read as the bad one', () => {
    for (const { acted, rest, wireOff } of signals) {
      const which = `${acted.text} / ${rest.text}`;
      expect(acted.text, which).not.toBe(rest.text);
      expect(bad.includes(acted.meaning) && bad.includes(rest.meaning), which).toBe(false);
      if (bad.includes(acted.meaning)) expect(wireOff, which).toBe('acted');
      else expect(wireOff, which).toBe(bad.includes(rest.meaning) ? 'rest' : 'either');
    }
  });

  it('names a machine or place in both states, with its number wherever that has one', () => {
    for (const { thing, acted, rest } of signals)
      for (const { text } of [acted, rest]) expect(text.includes('#'), text).toBe(thing.includes('#'));
  });
});

describe('docs/vocabulary.md', () => {
  it('lists whatever can be read on a drawing, in the acts and in the faults', () => {
    const text = readFileSync(new URL('../../docs/vocabulary.md', import.meta.url), 'utf8');
    const listed = new Map(
      text
        .split(/^## /m)
        .slice(1)
        .map((part) => {
          const [name = '', ...lines] = part.split('\n');
          return [name, new Set(lines.filter((line) => line.startsWith('- ')).map((line) => line.slice(2)))];
        }),
    );
    const missing = [...vocabularyOf(10, 'is it listed')].flatMap(([name, texts]) =>
      [...texts].filter((each) => !listed.get(name)?.has(each)).map((each) => `${name}: ${each}`),
    );
    expect(missing, 'npm run docs:vocabulary').toEqual([]);
    expect([...listed.values()].reduce((sum, { size }) => sum + size, 0)).toBeGreaterThan(1000);
  });
});
