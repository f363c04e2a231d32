/** The approved pictures: every symbol in its states, and whole drawings at every width. */

import type { Act } from '../../shared/scenario.ts';
import { readActs } from '../../src/circuit/index.ts';
import {
  drawSvgs,
  PROFILES,
  picturesOf,
  renameFor,
  type Scene,
  type SceneSymbol,
  type ShownState,
  shownState,
  svgOf,
  type Theme,
  timingPicture,
  type Width,
} from '../../src/drawing/index.ts';
import type { LayoutOptions } from '../../src/drawing/layout/layout.ts';
import { REST } from '../../src/drawing/states/shown-state.ts';
import { symbolFor } from '../../src/drawing/symbols/index.ts';
import { solve } from '../../src/solver/index.ts';
import { english } from '../../src/words/en/core.ts';
import { layOut } from '../support/in-english.ts';
import { type GalleryCircuit, galleryCircuit } from './gallery-circuits.ts';

export interface Exhibit {
  /** Below docs/gallery. */
  readonly file: string;
  readonly title: string;
  readonly svg: string;
}

type Form = SceneSymbol['form'];
type Trait = Partial<Pick<SceneSymbol, 'actuator' | 'delay' | 'winding' | 'flipped'>>;

const CLOSED_AT_REST: readonly Form[] = ['break', 'main-break', 'fuse', 'heater'];

/** One symbol as a scene places it, its line at `x`. */
function symbolAt(form: Form, x: number, device: string, trait: Trait, terminals: number): SceneSymbol {
  const contact = !['coil', 'lamp', 'sounder', 'valve', 'motor', 'input', 'common', 'terminal'].includes(
    form,
  );
  const ways =
    form === 'changeover'
      ? [
          { from: '11', to: '12', closedIn: [0] },
          { from: '11', to: '14', closedIn: [1] },
        ]
      : contact
        ? [
            {
              from: '1',
              to: '2',
              closedIn: form === 'heater' ? [0, 1] : CLOSED_AT_REST.includes(form) ? [0] : [1],
            },
          ]
        : [];
  const looks = { form, flipped: trait.flipped ?? false, terminals, above: true, ...trait };
  const art = symbolFor(looks);
  const [top, bottom] = [14, 14 + art.height];
  const port = (name: string, dx: number, y: number) => ({ terminal: `${device}:${name}`, x: x + dx, y });
  const [upper, lower] = looks.flipped ? [bottom, top] : [top, bottom];
  const ports =
    form === 'motor'
      ? ['U1', 'V1', 'W1', 'U2', 'V2', 'W2']
          .slice(0, terminals)
          .map((name, i) => port(name, (i % 3) * 38 - 38, i < 3 ? top : bottom))
      : form === 'changeover'
        ? [port('11', 0, upper), port('12', -10, lower), port('14', 10, lower)]
        : form === 'common'
          ? [port('COM', 0, top)]
          : [port(form === 'input' ? 'I1' : '1', 0, top), port('2', 0, bottom)];
  return {
    id: `${device}:${form}`,
    device,
    place: '',
    form,
    look: JSON.stringify([form, trait, terminals]),
    flipped: looks.flipped,
    ...trait,
    mechanism: device,
    ...(form === 'coil' ? { coil: device } : {}),
    ways,
    x,
    left: x - art.left,
    right: x + art.right,
    top,
    bottom,
    ports,
  };
}

/** From one to the next. */
const spaceFor = (form: Form): number => (form === 'motor' ? 170 : 110);

/** The symbol at rest; then in each other state it has. */
function symbolSvg(form: Form, trait: Trait = {}, terminals = 2): string {
  const names = ['-K1', '-K2', '-K3', '-K4'];
  const space = spaceFor(form);
  const lit = ['lamp', 'sounder', 'valve', 'motor'].includes(form);
  const count = form === 'lamp' ? 4 : form === 'terminal' || form === 'common' || form === 'heater' ? 1 : 2;
  const symbols = names
    .slice(0, count)
    .map((name, i) => symbolAt(form, space * (i + (form === 'motor' ? 0.4 : 0.6)), name, trait, terminals));
  const state: ShownState = {
    ...REST,
    positions: new Map([['-K2', 1]]),
    loads: lit
      ? new Map([
          ['-K2', 'lit'],
          ['-K3', 'dim'],
          ['-K4', 'flashing'],
        ])
      : new Map(),
    coils: new Map([['-K2', true]]),
    inputs: new Map([['-K2:I1', '1']]),
  };
  const height = Math.max(...symbols.map(({ bottom }) => bottom)) + 14;
  const scene: Scene = {
    profile: 'screen',
    title: form,
    conductors: [],
    sheets: [
      {
        sheet: 1,
        piece: 1,
        pieces: 1,
        title: form,
        width: space * count + 10,
        height,
        symbols,
        wires: [],
        dots: [],
        marks: [],
        links: [],
        texts: [],
        frame: [],
      },
    ],
  };
  return svgOf(picturesOf(scene, state).picture(0), { label: `${form}, at rest and in its other states` });
}

const FORMS: readonly (readonly [file: string, form: Form, trait?: Trait, terminals?: number])[] = [
  ['make', 'make'],
  ['break', 'break'],
  ['changeover', 'changeover', {}, 3],
  ['changeover-turned-over', 'changeover', { flipped: true }, 3],
  ['main-make', 'main-make'],
  ['main-break', 'main-break'],
  ['breaker-pole', 'breaker-pole'],
  ['isolator-pole', 'isolator-pole'],
  ['fuse', 'fuse'],
  ['heater', 'heater'],
  ['coil', 'coil'],
  ['coil-slow-operating', 'coil', { delay: 'operate' }],
  ['coil-slow-releasing', 'coil', { delay: 'release' }],
  ['coil-pulsing', 'coil', { delay: 'pulse' }],
  ['coil-set', 'coil', { winding: 'set' }],
  ['coil-reset', 'coil', { winding: 'reset' }],
  ['coil-control', 'coil', { winding: 'control' }],
  ['lamp', 'lamp'],
  ['sounder', 'sounder'],
  ['valve', 'valve'],
  ['motor', 'motor', {}, 3],
  ['motor-six-terminals', 'motor', {}, 6],
  ['input', 'input'],
  ['output', 'output'],
  ['common', 'common', {}, 1],
  ['terminal', 'terminal'],
  ['push-button', 'make', { actuator: 'push' }],
  ['emergency-stop', 'break', { actuator: 'mushroom' }],
  ['selector', 'make', { actuator: 'turn' }],
  ['field-contact', 'break', { actuator: 'field' }],
  ['limit-switch', 'make', { actuator: 'limit' }],
  ['float-switch', 'make', { actuator: 'float' }],
  ['overload-contact', 'break', { actuator: 'trip' }],
  ['late-operating-make', 'make', { delay: 'operate' }],
  ['late-operating-break', 'break', { delay: 'operate' }],
  ['late-releasing-make', 'make', { delay: 'release' }],
  ['late-releasing-changeover', 'changeover', { delay: 'release' }, 3],
];

const actsOf = (text: string): readonly Act[] => {
  const read = readActs(text);
  if (!read.ok) throw new Error(text);
  return read.value;
};

interface Drawing {
  readonly file: string;
  readonly circuit: GalleryCircuit;
  readonly width: Width;
  readonly theme?: Theme;
  readonly letters?: 'old' | 'new';
  /** Shown after these acts, with the ways of these loads picked out. */
  readonly after?: string;
  readonly explain?: readonly string[];
}

const DRAWINGS: readonly Drawing[] = [
  { file: 'vent-fan-screen', circuit: 'vent-fan', width: 'screen' },
  { file: 'vent-fan-phone-dark', circuit: 'vent-fan', width: 'phone', theme: 'dark' },
  {
    file: 'vent-fan-tripped',
    circuit: 'vent-fan',
    width: 'screen',
    after: 'make -B1',
    explain: ['-H1', '-H2'],
  },
  { file: 'mist-line-screen-new-letters', circuit: 'mist-line', width: 'screen', letters: 'new' },
  {
    file: 'mist-line-running',
    circuit: 'mist-line',
    width: 'phone',
    after: 'press -S1; release -S1',
    explain: ['-K1', '-H2'],
  },
  { file: 'ramp-hoist-a4', circuit: 'ramp-hoist', width: 'a4' },
  { file: 'ramp-hoist-phone', circuit: 'ramp-hoist', width: 'phone' },
  {
    file: 'ramp-hoist-raising-dark',
    circuit: 'ramp-hoist',
    width: 'screen',
    theme: 'dark',
    after: 'press -S1',
    explain: ['-K2'],
  },
  { file: 'brine-pump-screen', circuit: 'brine-pump', width: 'screen' },
  { file: 'two-supplies-a4', circuit: 'two-supplies', width: 'a4' },
  { file: 'two-switches-screen', circuit: 'two-switches', width: 'screen' },
];

function drawingSvgs({ circuit: name, width, theme, letters, after, explain = [] }: Drawing): string[] {
  const circuit = galleryCircuit(name);
  const acts = actsOf(after ?? '');
  const options: LayoutOptions = {
    ...(letters ? { rename: renameFor(circuit, letters) } : {}),
    ...(after ? { note: english.drawing.frame.after(after) } : {}),
  };
  const scene = layOut(circuit, PROFILES[width], options);
  return drawSvgs(scene, {
    ...(theme ? { theme } : {}),
    ...(width === 'a4' ? { millimetres: 0.25 } : {}),
    ...(after
      ? { state: shownState(solve(circuit, { start: 'live', faults: [], acts: [...acts] }), explain) }
      : {}),
  });
}

/** Everything that is kept, drawn now. */
export function exhibits(): Exhibit[] {
  const symbols = FORMS.map(([file, form, trait, terminals]) => ({
    file: `symbols/${file}.svg`,
    title: file.replaceAll('-', ' '),
    svg: symbolSvg(form, trait, terminals),
  }));
  const drawings = DRAWINGS.flatMap((drawing) =>
    drawingSvgs(drawing).map((svg, index) => ({
      file: `drawings/${drawing.file}${index > 0 ? `-${index + 1}` : ''}.svg`,
      title: drawing.file.replaceAll('-', ' '),
      svg,
    })),
  );
  const timings = (
    [
      [
        'brine-pump-timing',
        'brine-pump',
        'make -B1; wait 8 s; break -B2; wait 10 s; break -B1; wait 40 s',
        'screen',
      ],
      ['mist-line-timing-phone', 'mist-line', 'press -S1; release -S1; press -S0; release -S0', 'phone'],
      ['brine-pump-operate-times', 'brine-pump', 'make -B1; wait 8 s; break -B2; wait 10 s', 'screen', true],
    ] as const
  ).map(([file, circuit, acts, width, operateTimes = false]) => ({
    file: `timing/${file}.svg`,
    title: file.replaceAll('-', ' '),
    svg: svgOf(
      timingPicture(
        english,
        galleryCircuit(circuit),
        { start: 'live', faults: [], acts: [...actsOf(acts)] },
        { width, operateTimes },
      ),
      {},
    ),
  }));
  return [...symbols, ...drawings, ...timings];
}

/** The page that shows them all. */
export function galleryPage(list: readonly Exhibit[]): string {
  const part = (folder: string, heading: string): string[] => [
    `## ${heading}`,
    '',
    ...list
      .filter(({ file }) => file.startsWith(`${folder}/`))
      .flatMap(({ file, title }) => [`**${title}**`, '', `![${title}](${file})`, '']),
  ];
  return [
    '# Approved pictures',
    '',
    'Made by `npm run -s gallery`; a test compares them with what is drawn now. Whoever changes how something looks',
    'makes them anew and looks at each picture that changed.',
    '',
    ...part('drawings', 'Drawings'),
    ...part('timing', 'Timing diagrams'),
    ...part('symbols', 'Symbols'),
  ].join('\n');
}
