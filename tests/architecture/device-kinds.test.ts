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
  'src/words/en/drawing.ts',
];

/** The same words as names of something else. */
const OTHERWISE: Readonly<Record<string, readonly string[]>> = {
  'shared/solution.ts': ['lamp'],
  'src/banks/blocks/drawing-block.ts': ['lamp', 'relay'],
  'src/banks/blocks/kinds/plain-states.ts': ['lamp', 'relay'],
  'src/banks/blocks/kinds/sequence.ts': ['lamp', 'relay'],
  'src/banks/blocks/kinds/wiring.ts': ['lamp'],
  'src/circuit/issues.ts': ['terminals'],
  'src/circuit/notation/quantity.ts': ['terminals'],
  'src/circuit/soundness/index.ts': ['terminals'],
  'src/cli/commands/solve.ts': ['lamp'],
  'src/generator/board.ts': ['inputs'],
  'src/generator/picture.ts': ['inputs'],
  'src/misconceptions/delays-exchanged.misconception.ts': ['on-delay', 'off-delay'],
  'src/questions/explain/explain-states.ts': ['flasher', 'relay'],
  'src/questions/explain/relay-why.ts': ['on-delay', 'off-delay'],
  'src/questions/items.ts': ['lamp', 'relay', 'flasher'],
  'src/solver/coils.ts': ['on-delay', 'off-delay'],
  'src/solver/machine.ts': ['on-delay', 'off-delay'],
  'src/solver/tell.ts': ['inputs'],
  'src/words/en/problems/soundness.ts': ['terminals'],
  'src/words/en/questions/lamp-states.ts': ['lamp'],
  'src/words/en/questions/relay-states.ts': ['relay'],
};

/** Where a kind is still asked for by name. This list only shrinks. */
const STILL: Readonly<Record<string, readonly string[]>> = {
  'src/circuit/rules/contact-on-return.ts': ['motor'],
  'src/circuit/rules/wrong-voltage.ts': ['motor'],
  'src/drawing/describe/stop-said.ts': [
    'flasher',
    'fuse',
    'lamp',
    'motor',
    'off-delay',
    'on-delay',
    'selector',
    'sounder',
    'valve',
  ],
  'src/drawing/layout/draw-symbols.ts': ['motor'],
  'src/drawing/layout/extents.ts': ['motor'],
  'src/drawing/layout/labels.ts': ['motor'],
  'src/drawing/layout/lanes.ts': ['motor'],
  'src/drawing/layout/levels.ts': ['motor'],
  'src/drawing/layout/standing.ts': ['motor'],
  'src/drawing/parts/of-device.ts': ['lamp', 'motor', 'sounder', 'valve'],
  'src/drawing/parts/part.ts': ['fuse', 'lamp', 'motor', 'sounder', 'valve'],
  'src/drawing/parts/runs.ts': ['motor'],
  'src/drawing/picture/picture.ts': ['motor'],
  'src/drawing/picture/state-marks.ts': ['fuse', 'lamp', 'motor', 'sounder', 'valve'],
  'src/drawing/steps/caption.ts': ['lamp', 'motor', 'sounder', 'valve'],
  'src/drawing/symbols/index.ts': ['fuse', 'lamp', 'motor', 'sounder', 'valve'],
  'src/drawing/text/glyphs.ts': ['fuse', 'lamp', 'motor', 'sounder', 'valve'],
  'src/drawing/text/profile.ts': ['fuse', 'lamp', 'motor', 'sounder', 'valve'],
  'src/drawing/timing/signals.ts': [
    'breaker',
    'fuse',
    'isolator',
    'lamp',
    'motor',
    'selector',
    'sounder',
    'valve',
  ],
  'src/generator/accept.ts': ['motor'],
  'src/generator/families/delayed.ts': ['field-contact'],
  'src/generator/families/duty-standby.family.ts': ['field-contact'],
  'src/generator/families/interlocked.family.ts': ['limit-switch'],
  'src/generator/families/off-delay.family.ts': ['off-delay'],
  'src/generator/families/on-delay.family.ts': ['on-delay'],
  'src/generator/families/pump-out.family.ts': ['float-switch'],
  'src/generator/families/star-delta.family.ts': ['on-delay'],
  'src/generator/families/two-hand.family.ts': ['on-delay'],
  'src/generator/features.ts': ['flasher', 'off-delay', 'on-delay'],
  'src/generator/finish.ts': [
    'contactor',
    'emergency-stop',
    'field-contact',
    'flasher',
    'float-switch',
    'inputs',
    'lamp',
    'latching-relay',
    'limit-switch',
    'off-delay',
    'on-delay',
    'push-button',
    'relay',
    'selector',
    'terminals',
  ],
  'src/generator/incidence.ts': ['motor', 'terminals'],
  'src/generator/vocabulary/entries.ts': ['field-contact', 'float-switch', 'limit-switch'],
  'src/misconceptions/plan-tools.ts': ['field-contact', 'float-switch', 'limit-switch'],
  'src/misconceptions/seal-where-none.misconception.ts': ['push-button'],
  'src/misconceptions/timers-instant.misconception.ts': ['flasher', 'off-delay', 'on-delay'],
  'src/questions/ask/situation.ts': [
    'breaker',
    'emergency-stop',
    'field-contact',
    'flasher',
    'float-switch',
    'isolator',
    'limit-switch',
    'off-delay',
    'on-delay',
    'push-button',
  ],
  'src/questions/explain/history.ts': ['motor'],
  'src/questions/explain/potential.ts': ['lamp'],
  'src/questions/explain/wording.ts': [
    'emergency-stop',
    'field-contact',
    'float-switch',
    'fuse',
    'limit-switch',
    'outputs',
    'overload',
    'push-button',
    'selector',
  ],
  'src/questions/kinds/meter/points.ts': ['lamp', 'motor'],
  'src/questions/may-be-between.ts': ['motor'],
  'src/solver/plan-of.ts': ['motor'],
  'src/solver/readings.ts': ['lamp', 'motor', 'sounder', 'valve'],
  'src/solver/run.ts': ['lamp'],
  'src/web/engine/live-acts.ts': ['selector'],
  'src/web/engine/spots.ts': ['lamp', 'motor', 'sounder', 'valve'],
  'src/words/en/problems/rules.ts': ['lamp', 'sounder', 'valve'],
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
  const known = Object.fromEntries(
    [...Object.keys(OTHERWISE), ...Object.keys(STILL)].map((file) => [
      file,
      sorted([...(OTHERWISE[file] ?? []), ...(STILL[file] ?? [])]),
    ]),
  );
  expect(named).toEqual(known);
});
