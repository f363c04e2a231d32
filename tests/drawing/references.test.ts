/** What contacts refer to, and the positions at them, read off the picture and compared with the circuit. */
import { describe, expect, it } from 'vitest';
import type { Circuit, ContactSpec } from '../../shared/circuit.ts';
import { readCircuit, writeCircuit } from '../../src/circuit/index.ts';
import { PROFILES, type SceneSymbol } from '../../src/drawing/index.ts';
import { families, free, randomOf } from '../../src/generator/index.ts';
import { layOut } from '../support/in-english.ts';
import { WIDTHS } from './geometry-check.ts';
import { diceOf, randomCircuit } from './random-circuit.ts';
import { type Written, writtenOn } from './read-references.ts';

const terminalsOf = ({ ports }: SceneSymbol): string[] =>
  ports.map(({ terminal }) => terminal.slice(terminal.indexOf(':') + 1));

const LETTER: Readonly<Record<string, string>> = { set: 'S ', reset: 'R ', control: 'C ' };

/** The lines at a symbol that end in a reference, or that list a contact of a row with its positions. */
const references = ({ beside, below }: Written): string[] =>
  [...beside, ...below].filter((line) => /(^|\s)\/[0-9]/.test(line));

/** What is expected at every symbol of one mechanism that stands in several places. */
function mismatches(circuit: Circuit, all: readonly Written[]): string[] {
  const wrong: string[] = [];
  const byMechanism = new Map<string, Written[]>();
  for (const each of all) {
    const { mechanism } = each.symbol;
    if (mechanism) byMechanism.set(mechanism, [...(byMechanism.get(mechanism) ?? []), each]);
  }
  for (const [mechanism, list] of byMechanism) {
    const coils = list.filter(({ symbol }) => symbol.form === 'coil');
    const heads = list.filter(({ symbol, stand, linked }) =>
      coils.length > 0 ? symbol.form === 'coil' : !linked && stand.length > 0,
    );
    const listing = heads.filter((head) => references(head).some((line) => !/^([SRC] )?\//.test(line)));
    const elsewhere = (one: Written): Written[] =>
      list.filter(({ symbol }) => !one.stand.includes(symbol.id));
    const apart = heads.some((head) => elsewhere(head).length > 0);
    if (apart && listing.length !== 1) wrong.push(`${mechanism}: listed at ${listing.length} places`);
    const [head] = listing;
    if (!apart || !head) continue;
    for (const { symbol, place } of elsewhere(head)) {
      const expected = `${terminalsOf(symbol).join('-')} ${place}`;
      const legs = terminalsOf(symbol).slice(1);
      const positioned = circuit.devices.some(
        (device) => device.name === symbol.device && device.kind === 'selector',
      );
      const found = references(head);
      const ends = (line: string, start: string): boolean =>
        line.startsWith(`${start} `) && line.endsWith(` ${place}`);
      const has = !positioned
        ? found.includes(expected)
        : symbol.form === 'changeover'
          ? legs.every((leg) => found.some((line) => ends(line, leg)))
          : found.some((line) => ends(line, terminalsOf(symbol).join('-')));
      if (!has) wrong.push(`${head.symbol.id} doesn't list ${expected}: ${found.join(', ')}`);
    }
    for (const one of list) {
      if (one === head || one.linked || head.stand.includes(one.symbol.id)) continue;
      const to = one.symbol.form === 'coil' || coils.length === 0 ? [head] : coils;
      const expected = to.map((coil) => `${LETTER[coil.symbol.winding ?? ''] ?? ''}${coil.place}`).sort();
      if (references(one).sort().join() !== expected.join())
        wrong.push(`${one.symbol.id} refers to ${references(one).join()}, not ${expected.join()}`);
    }
  }
  return wrong;
}

/** After the notation (docs/notation.md): in which positions each way through a selector's contact is closed. */
function closedIn(spec: ContactSpec, positions: readonly string[]): Map<string, string> {
  const named = spec.positions ?? positions.slice(1);
  const made = positions.filter((position) => named.includes(position)).join(' ') || '-';
  const others = positions.filter((position) => !named.includes(position)).join(' ') || '-';
  const [common, first = '', second = ''] = spec.terminals;
  if (spec.form === 'make') return new Map([[`${common}-${first}`, made]]);
  if (spec.form === 'break') return new Map([[`${common}-${first}`, others]]);
  return new Map([
    [`${common}-${first}`, others],
    [`${common}-${second}`, made],
  ]);
}

/** The positions read at each contact of each selector, by its way. */
function positionsRead(
  all: readonly Written[],
  { symbol, beside, over, stand }: Written,
): Map<string, string> {
  const [common, ...legs] = terminalsOf(symbol);
  const read = new Map<string, string>();
  const own = symbol.form === 'changeover' ? over.join(' ') : '';
  for (const leg of legs) {
    const way = `${common}-${leg}`;
    const label = symbol.form === 'changeover' ? leg : way;
    const list = [
      ...beside,
      ...all.filter((other) => stand.includes(other.symbol.id)).flatMap((other) => other.beside),
    ];
    const line = list.find((text) => text.startsWith(`${label} `));
    // A single contact's stand under its name alone, a joined one's over the dashed line.
    const alone = symbol.form === 'changeover' ? '' : (over[0] ?? beside[1] ?? '');
    read.set(way, line ? line.slice(label.length + 1).replace(/ \/\S+$/, '') : alone);
    if (own && !own.includes(`${leg} ${read.get(way)}`)) read.set(way, `${own} over its line`);
    if (over.length > 0 && symbol.form !== 'changeover' && over[0] !== read.get(way))
      read.set(way, `${over[0]} over its line`);
  }
  return read;
}

function expectTold(circuit: Circuit, name: string): { readonly apart: number; readonly contacts: number } {
  let [apart, contacts] = [0, 0];
  for (const width of WIDTHS) {
    const all = writtenOn(layOut(circuit, PROFILES[width]));
    const of = `${name} for ${width}:\n${writeCircuit(circuit)}`;
    expect(mismatches(circuit, all), of).toEqual([]);
    expect(
      all.map(({ symbol, place }) => (symbol.place === place ? '' : `${symbol.id} ${place}`)).filter(Boolean),
      of,
    ).toEqual([]);
    apart += all.filter((each) => references(each).length > 0).length;
    for (const device of circuit.devices) {
      if (device.kind !== 'selector') continue;
      const truth = new Map(device.contacts.flatMap((spec) => [...closedIn(spec, device.positions)]));
      for (const each of all.filter(({ symbol }) => symbol.device === device.name)) {
        contacts += 1;
        for (const [way, positions] of positionsRead(all, each))
          expect(`${way} ${positions}`, of).toBe(`${way} ${truth.get(way)}`);
      }
    }
  }
  return { apart, contacts };
}

const read = (text: string): Circuit => {
  const circuit = readCircuit(text);
  if (!circuit.ok) throw new Error(JSON.stringify(circuit.problems));
  return circuit.value;
};

describe('contacts that stand apart are found from each other, and positions at every contact, read off the picture', () => {
  it('for random circuits of every device kind', () => {
    let [apart, contacts] = [0, 0];
    for (let seed = 0; seed < 300; seed++) {
      const dice = diceOf(seed);
      const circuit = randomCircuit(dice, {
        paths: 1 + dice.below(12),
        sheets: 1 + dice.below(2),
        odd: 0.05,
      });
      const told = expectTold(circuit, `seed ${seed}`);
      apart += told.apart;
      contacts += told.contacts;
    }
    expect(apart).toBeGreaterThan(1000);
    expect(contacts).toBeGreaterThan(100);
  });

  it.each([...families, free].map((family) => [family.id, family] as const))(
    'for circuits of %s',
    (_, family) => {
      for (let seed = 0; seed < 8; seed++) {
        const { min, max } = family.size;
        const { circuit } = family.draft(randomOf(`told ${family.id} ${seed}`), {
          size: min + (seed % (max - min + 1)),
        });
        expectTold(circuit, `${family.id} ${seed}`);
      }
    },
  );

  it('for a selector whose contacts are joined, stand apart, and change over', () => {
    const circuit = read(`supply A 24 V AC
-S1 selector Off/Hand/Auto make Hand make Auto make Hand+Auto break Off
-S2 selector off/on changeover changeover
-H1 lamp
-H2 lamp
A:L -S1:13-14 -H1:X1-X2 A:N
A:L -S1:23-24 -H1:X1
A:L -S2:11-12 -H2:X1-X2 A:N
-S2:14 -S1:33-34 -H2:X1
A:L -S2:21-22 -S1:41-42 -H1:X1
-S2:24 -H2:X1`);
    expect(expectTold(circuit, 'selector').contacts).toBe(18);
    const texts = layOut(circuit, PROFILES.screen).sheets.flatMap((sheet) =>
      sheet.texts.map(({ text }) => text),
    );
    expect(texts).toEqual(
      expect.arrayContaining([
        '13-14 Hand',
        '23-24 Auto',
        '33-34 Hand Auto /5',
        '41-42 Hand Auto',
        '12 off 14 on',
        '14 on',
      ]),
    );
  });

  it('lists of neighbouring coils stand so far apart that no row of one goes on in the other', () => {
    let neighbours = 0;
    for (const family of families)
      for (let seed = 0; seed < 6; seed++) {
        const { circuit } = family.draft(randomOf(`apart ${seed}`), { size: family.size.max });
        for (const width of WIDTHS)
          for (const { texts } of layOut(circuit, PROFILES[width]).sheets) {
            const below = texts.filter(
              ({ role, anchor }) => anchor === 'start' && (role === 'list' || role === 'text'),
            );
            for (const one of below)
              for (const other of below) {
                const gap = other.x - one.x - one.width;
                if (one.y !== other.y || one.of === other.of || gap < 0 || gap > 60) continue;
                neighbours += 1;
                // Four blanks of the lettering.
                expect(
                  gap,
                  `${family.id} ${seed} ${width}: ${one.text} and ${other.text}`,
                ).toBeGreaterThanOrEqual(13);
              }
          }
      }
    expect(neighbours).toBeGreaterThan(100);
  });

  it('an emergency stop has one head, and at its other contacts the place of it', () => {
    const circuit = read(`supply A 24 V AC
-S0 emergency-stop break break "Emergency stop"
-H1 lamp
-H2 lamp
-H3 lamp
A:L -S0:11-12 -H1:X1-X2 A:N
A:L -H2:X1-X2 A:N
A:L -S0:21-22 -H3:X1-X2 A:N`);
    const { sheets } = layOut(circuit, PROFILES.screen);
    const contacts = sheets.flatMap(({ symbols }) => symbols).filter(({ device }) => device === '-S0');
    expect(contacts.map(({ actuator }) => actuator)).toEqual(['mushroom', 'elsewhere']);
    expectTold(circuit, 'emergency stop');
  });

  it('references name the page where a sheet takes several', () => {
    const lamps = Array.from({ length: 60 }, (_, at) => at + 1);
    const circuit = read(`supply A 24 V AC
-S1 push-button make
-K1 contactor 4 main ${'make '.repeat(8)}
${lamps.map((lamp) => `-H${lamp} lamp "Grinding stone ${lamp}"`).join('\n')}
A:L -S1:13-14 -K1:A1-A2 A:N
${lamps.map((lamp) => (lamp > 52 ? `A:L -K1:${lamp - 52}3-${lamp - 52}4 -H${lamp}:X1-X2 A:N` : `A:L -H${lamp}:X1-X2 A:N`)).join('\n')}`);
    const { sheets } = layOut(circuit, PROFILES.a4);
    expect(sheets.length).toBeGreaterThan(1);
    expectTold(circuit, 'many lamps');
    const last = sheets.at(-1)?.texts.map(({ text }) => text) ?? [];
    expect(last.filter((text) => text === '/1.1').length).toBeGreaterThan(0);
    const first = sheets[0]?.texts.filter(({ role }) => role === 'list').map(({ text }) => text) ?? [];
    expect(first.some((text) => /^\d\d-\d\d \/1[a-z]\.\d+$/.test(text))).toBe(true);
    expect(sheets.flatMap(({ texts }) => texts).filter(({ text }) => text.includes('_'))).toEqual([]);
  });
});
