/** The drawing told in time and in words: steps, timing diagrams, the text alternative, PDF. */

import { inflateSync } from 'node:zlib';
import { expect, describe as group, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { readActs, readCircuit } from '../../src/circuit/index.ts';
import {
  describe,
  PROFILES,
  picturesOf,
  renameFor,
  stepsOf,
  svgOf,
  tellCaption,
  timingPicture,
} from '../../src/drawing/index.ts';
import { drawPdf } from '../../src/drawing/pdf/draw-pdf.ts';
import { scaleOf } from '../../src/drawing/timing/scale.ts';
import { nameOf, signalsOf } from '../../src/drawing/timing/signals.ts';
import { solve } from '../../src/solver/index.ts';
import { english } from '../../src/words/en/core.ts';
import { say } from '../../src/words/index.ts';
import { layOut } from '../support/in-english.ts';
import { galleryCircuit } from './gallery-circuits.ts';
import { diceOf, randomCircuit } from './random-circuit.ts';
import { wellFormed } from './well-formed.ts';

function scenario(acts: string) {
  const read = readActs(acts);
  if (!read.ok) throw new Error(acts);
  return { start: 'live' as const, faults: [], acts: [...read.value] };
}

group('steps in slow motion', () => {
  const circuit = galleryCircuit('vent-fan');

  it('show the coil, then the break contact, then the make contact, each with its lamp', () => {
    const { steps, cutOff } = stepsOf(circuit, scenario('make -B1'));
    expect(cutOff).toBe(false);
    expect(steps.filter(({ act }) => act === 0).map(({ caption }) => tellCaption(english, caption))).toEqual([
      '-B1 ("Fan tripped") is actuated.',
      '-B1 is actuated. Coil -K3 is energised.',
      '-K3 picks up: its break contacts open. -H1 ("Fan healthy") goes dark.',
      '-K3 has operated: its make contacts close. -H2 ("Fan tripped") lights.',
    ]);
    const times = steps.map(({ ms }) => ms);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  it('show a blade on its way as travelling, and end where the solver ends', () => {
    const { steps } = stepsOf(circuit, scenario('make -B1'));
    const travelling = steps.filter(
      ({ state }) => state.positions.has('-K3') && state.positions.get('-K3') === undefined,
    );
    expect(travelling).toHaveLength(1);
    expect([...(travelling[0]?.state.loads.values() ?? [])]).toEqual(['dark', 'dark']);
    const { solution } = solve(circuit, scenario('make -B1'));
    const last = steps.at(-1)?.state;
    expect(Object.fromEntries(last?.loads ?? [])).toEqual({ ...solution.lamps, ...solution.loads });
  });

  it('stop with a word when a circuit never rests', () => {
    const buzzer: Circuit = {
      ...circuit,
      paths: [
        {
          sheet: 1,
          steps: [
            { device: 'A', enter: 'L' },
            { device: '-F1', enter: '1', leave: '2' },
            { device: '-K3', enter: '11', leave: '12' },
            { device: '-K3', enter: 'A1', leave: 'A2' },
            { device: 'A', enter: 'N' },
          ],
        },
      ],
    };
    const { steps, cutOff } = stepsOf(buzzer, scenario(''), { most: 10 });
    expect(steps.length).toBeLessThanOrEqual(10);
    expect(cutOff).toBe(true);
  });
});

group('timing diagrams', () => {
  it('have a line for everything that changes and nothing else', () => {
    const { signals, acts } = signalsOf(
      galleryCircuit('brine-pump'),
      scenario('make -B1; wait 8 s; break -B2'),
    );
    expect(signals.map((signal) => nameOf(english, signal))).toEqual([
      '-B1',
      '-B2',
      '-K1 coil',
      '-K1 contacts',
      '-K2 coil',
      '-K2 contacts',
      '-H1',
      '-H2',
      '-H3',
    ]);
    expect(acts.map(({ act }) => say(english.acts, act))).toEqual([
      '-B1 ("Brine wanted") is actuated',
      '-B2 ("Flow present") is actuated',
    ]);
    const late = signals.find(({ id }) => id === '-K2 contacts')?.changes.find(({ level }) => level === 1);
    expect(late?.ms).toBeGreaterThan(5000);
    expect(late?.ms).toBeLessThan(5100);
  });

  it('keep time in proportion where that can be read, and say so where they do not', () => {
    const written = { text: english.drawing.timing.moment, width: (text: string) => text.length * 6 };
    const even = scaleOf([0, 2000, 9000], [0, 9000], 100, 900, written);
    expect(even.even).toBe(true);
    expect((even.x(9000) - even.x(0)) / (even.x(2000) - even.x(0))).toBeCloseTo(4.5);
    const mixed = scaleOf([0, 2, 7, 9, 5000], [0, 7, 9], 100, 900, written);
    expect(mixed.even).toBe(false);
    const places = [0, 2, 7, 9, 5000].map(mixed.x);
    places.slice(1).forEach((x, at) => {
      expect(x - (places[at] as number)).toBeGreaterThan(20);
    });
    expect(Math.max(...places)).toBeLessThanOrEqual(900);
    const text = svgOf(
      timingPicture(
        english,
        galleryCircuit('mist-line'),
        scenario('press -S1; wait 5 s; release -S1; press -S0; wait 9 s'),
      ),
      {},
    );
    expect(text).toContain('Time is stretched');
    expect(wellFormed(text)).toEqual([]);
  });

  it('are drawn for random circuits at every width', () => {
    for (let seed = 0; seed < 40; seed++) {
      const circuit = randomCircuit(diceOf(seed), { paths: 5, sheets: 1, odd: 0.05 });
      const buttons = circuit.devices.filter(({ kind }) => kind === 'push-button').slice(0, 2);
      const acts =
        buttons.map(({ name }) => `press ${name}; wait 3 s; release ${name}`).join('; ') || 'wait 1 s';
      for (const width of ['phone', 'screen', 'a4'] as const) {
        const picture = timingPicture(english, circuit, scenario(acts), { width });
        expect(wellFormed(svgOf(picture, {})), `seed ${seed}`).toEqual([]);
        for (const item of picture.items)
          if (item.kind === 'text')
            expect(item.x, `seed ${seed} ${item.text}`).toBeLessThanOrEqual(picture.width);
      }
    }
  });
});

group('the drawing in words', () => {
  it('follows the paths as they are drawn', () => {
    expect(describe(english, galleryCircuit('vent-fan')).split('\n')).toEqual([
      'Control drawing: Vent fan 2: running and tripped. Drawn at rest: de-energised and unactuated.',
      'Supply A: 24 V AC, poles L and N.',
      'Path 1: from A:L; pole 1 to 2 of circuit-breaker -F1 "Control supply"; make contact 13 to 14 of field contact -B1 "Fan tripped"; coil A1 to A2 of relay -K3; to A:N.',
      'Path 2: from -F1:2 (path 1); changeover contact with common 11, break leg 12 and make leg 14 of relay -K3 (coil in path 1), on from 12; green lamp -H1 "Fan healthy", X1 to X2; to A:N.',
      'Path 3: from -K3:14 (path 2); amber lamp -H2 "Fan tripped", X1 to X2; to A:N.',
    ]);
  });

  it('calls contacts late where their relay waits, and those of a flasher not', () => {
    const text = `supply A 24 V DC
-S1 push-button make
-K1 on-delay 5 s
-K2 off-delay 5 s
-K3 flasher 1 s on 1 s off
-H1 lamp
-H2 lamp
-H3 lamp
A:L+ -S1:13-14 -K1:A1-A2 A:L-
-S1:14 -K2:A1-A2 A:L-
-S1:14 -K3:A1-A2 A:L-
A:L+ -K1:15-18 -H1:X1-X2 A:L-
A:L+ -K2:15-18 -H2:X1-X2 A:L-
A:L+ -K3:15-18 -H3:X1-X2 A:L-`;
    const read = readCircuit(text);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const words = describe(english, read.value);
    expect(words).toContain('late-operating make contact 15 to 18 of on-delay timer -K1 (5 s)');
    expect(words).toContain('late-releasing make contact 15 to 18 of off-delay timer -K2 (5 s)');
    expect(words).toMatch(/[;:] make contact 15 to 18 of flasher -K3 \(1 s on, 1 s off\)/);
  });

  it('names every device that is drawn, by its letters on the drawing, and says nothing of what is lit or live', () => {
    for (let seed = 0; seed < 120; seed++) {
      const circuit = randomCircuit(diceOf(seed), { paths: 8, sheets: 2, odd: 0.1 });
      const rename = renameFor(circuit, 'new');
      const words = describe(english, circuit, { rename });
      const scene = layOut(circuit, PROFILES.screen, { rename });
      for (const { device } of scene.sheets.flatMap((sheet) => sheet.symbols))
        expect(words, `seed ${seed}`).toMatch(new RegExp(`${rename(device)}(?![0-9])`));
      expect(words).not.toMatch(/\b(lit|dark|operated|tripped state|current flows|is energised)\b/);
    }
  });
});

group('PDF', () => {
  const made = new Date(0);

  it('has one page of A4 for each sheet, the same bytes for the same drawing, and its words for a reader that cannot see', async () => {
    const circuit = galleryCircuit('two-supplies');
    const scene = layOut(circuit, PROFILES.a4);
    const { picture } = picturesOf(scene);
    const pictures = scene.sheets.map((_, index) => picture(index));
    const options = {
      title: 'Flour line',
      language: 'de',
      made,
      alternatives: scene.sheets.map(({ sheet }) => describe(english, circuit, { sheet })),
    };
    const [one, two] = await Promise.all([drawPdf(pictures, options), drawPdf(pictures, options)]);
    const text = Buffer.from(one).toString('latin1');
    expect(text.startsWith('%PDF-1.5')).toBe(true);
    expect(text.match(/\/Type \/Page\b(?!s)/g)).toHaveLength(2);
    // 297 x 210 mm in points of 1/72 inch.
    expect(
      [...text.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(([, w, h]) => [
        Math.round(Number(w)),
        Math.round(Number(h)),
      ]),
    ).toEqual([
      [842, 595],
      [842, 595],
    ]);
    expect(text).toContain('relay -K1');
    expect(text).toContain('/Lang (de)');
    expect(text.replace(/\/ID \[.*?\]/s, '')).toBe(
      Buffer.from(two)
        .toString('latin1')
        .replace(/\/ID \[.*?\]/s, ''),
    );
    expect(text).not.toMatch(/\/JavaScript|\/OpenAction/);
  });

  it('writes what its letters cannot show as question marks', async () => {
    const circuit = { ...galleryCircuit('vent-fan'), title: '漢字 fan' };
    const scene = layOut(circuit, PROFILES.a4);
    const bytes = Buffer.from(
      await drawPdf([picturesOf(scene).picture(0)], { title: circuit.title, language: 'en', made }),
    );
    const streams = [...bytes.toString('latin1').matchAll(/stream\r?\n([\s\S]*?)\r?\nendstream/g)].flatMap(
      ([, body = '']) => {
        try {
          return [inflateSync(Buffer.from(body, 'latin1')).toString('latin1')];
        } catch {
          return [];
        }
      },
    );
    const hex =
      streams
        .join('')
        .match(/<([0-9a-f]+)>/gi)
        ?.join('') ?? '';
    expect(hex.toLowerCase()).toContain(Buffer.from('??').toString('hex'));
  });
});
