/** A device kind is its files and its lines in the registries: nothing else asks for it by name. */
import { expect, it } from 'vitest';
import { DEVICES } from '../../src/circuit/devices/registry.ts';
import { namingsIn, sourceFiles } from './named.ts';

/** Where kinds are at home: their files, and the registries in which each has its line. */
const HOME = [
  'shared/devices/',
  'src/circuit/devices/',
  'src/circuit/notation/grammars.ts',
  'src/drawing/devices/',
  'src/generator/devices',
  'src/words/en/devices.ts',
];

/** The same words as names of something else. */
const OTHERWISE: Readonly<Record<string, readonly string[]>> = {
  // What is read off a circuit, asked about or happens in it: a lamp, an input, a relay.
  'shared/solution.ts': ['lamp'],
  'src/banks/blocks/drawing-block.ts': ['lamp', 'relay'],
  'src/banks/blocks/kinds/plain-states.ts': ['lamp', 'relay'],
  'src/banks/blocks/kinds/sequence.ts': ['lamp', 'relay'],
  'src/banks/blocks/kinds/wiring.ts': ['lamp'],
  'src/circuit/anatomy/roles.ts': ['lamp'],
  'src/cli/commands/solve.ts': ['lamp'],
  'src/drawing/steps/caption.ts': ['lamp'],
  'src/drawing/timing/slowly.ts': ['lamp'],
  'src/generator/picture.ts': ['inputs'],
  'src/questions/explain/explain-states.ts': ['relay'],
  'src/questions/items.ts': ['flasher', 'lamp', 'relay'],
  'src/questions/kinds/meter/dirty.ts': ['lamp'],
  'src/solver/readings.ts': ['lamp'],
  'src/solver/round.ts': ['inputs'],
  'src/words/en/questions/lamp-states.ts': ['lamp'],
  'src/words/en/questions/relay-states.ts': ['relay'],
  // Roles of loads.
  'src/questions/explain/potential.ts': ['lamp'],
  'src/words/en/problems/rules.ts': ['lamp', 'sounder', 'valve'],
  // Drives of mechanisms.
  'src/circuit/anatomy/coil-device.ts': ['supplied-off-delay'],
  'src/misconceptions/delays-exchanged.misconception.ts': ['off-delay', 'on-delay', 'supplied-off-delay'],
  'src/questions/explain/relay-why.ts': ['flasher', 'off-delay', 'on-delay'],
  'src/questions/explain/standing.ts': ['flasher'],
  'src/solver/coils.ts': ['off-delay', 'on-delay', 'supplied-off-delay'],
  'src/solver/machine.ts': ['off-delay', 'on-delay', 'supplied-off-delay'],
  'src/solver/no-restart.rule.ts': ['off-delay'],
  // Families, and the parts of a drawing that they put lines in.
  'src/generator/board.ts': ['inputs'],
  'src/generator/families/off-delay.family.ts': ['off-delay'],
  'src/generator/families/on-delay.family.ts': ['on-delay'],
  'src/generator/finish.ts': ['inputs', 'lamp'],
  // What is read off a load.
  'src/generator/as-found.ts': ['lamp'],
  // Terminals: how many a circuit may have, and a motor has.
  'src/circuit/issues.ts': ['terminals'],
  'src/circuit/notation/quantity.ts': ['terminals'],
  'src/circuit/soundness/index.ts': ['terminals'],
  'src/words/en/problems/soundness.ts': ['terminals'],
};

const KINDS = Object.keys(DEVICES);

const sorted = (names: Iterable<string>): string[] => [...new Set(names)].toSorted();

it('no device kind is named outside its own places', () => {
  const files = sourceFiles();
  const home = files.filter((file) => HOME.some((place) => file.startsWith(place)));
  for (const place of HOME)
    expect(
      home.some((file) => file.startsWith(place) && namingsIn(file, KINDS).length > 0),
      place,
    ).toBe(true);
  const named = Object.fromEntries(
    files
      .filter((file) => !home.includes(file))
      .map((file) => [file, sorted(namingsIn(file, KINDS).map(({ name }) => name))] as const)
      .filter(([, names]) => names.length > 0),
  );
  expect(named).toEqual(OTHERWISE);
});
