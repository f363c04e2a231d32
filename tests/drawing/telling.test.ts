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
import { plainLetters } from '../../src/drawing/letters.ts';
import { drawPdf } from '../../src/drawing/pdf/draw-pdf.ts';
import { nameOf, type Signals } from '../../src/drawing/timing/lines.ts';
import { scaleOf } from '../../src/drawing/timing/scale.ts';
import { signalsOf } from '../../src/drawing/timing/signals.ts';
import { randomOf } from '../../src/generator/index.ts';
import { solve } from '../../src/solver/index.ts';
import { english } from '../../src/words/en/core.ts';
import { say } from '../../src/words/index.ts';
import { layOut } from '../support/in-english.ts';
import { circuitOf } from '../support/written.ts';
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
  const signalsIn = (file: Parameters<typeof galleryCircuit>[0], acts: string, operateTimes = false) =>
    signalsOf(galleryCircuit(file), scenario(acts), plainLetters, operateTimes);
  /** When a line comes to its levels, in milliseconds. */
  const times = ({ signals, moments }: Signals, id: string): [number | undefined, number][] =>
    signals.find((signal) => signal.id === id)!.changes.map(({ at, level }) => [moments[at], level]);

  it('have a line for everything that changes and nothing else, one for coil and contacts that go together', () => {
    const shown = signalsIn('brine-pump', 'make -B1; wait 8 s; break -B2');
    expect(shown.signals.map((signal) => nameOf(english, signal))).toEqual([
      '-B1',
      '-B2',
      '-K1',
      '-K2 coil',
      '-K2 contacts',
      '-H1',
      '-H2',
      '-H3',
    ]);
    expect(shown.acts.map(({ act }) => say(english.acts, act))).toEqual([
      '-B1 ("Brine wanted") is actuated',
      '-B2 ("Flow present") is actuated',
    ]);
  });

  it('fold the times that relays take into the edge, unless they are asked for', () => {
    const acts = 'make -B1; wait 8 s; break -B2';
    const folded = signalsIn('brine-pump', acts);
    expect(folded.operateTimes).toBe(false);
    expect(times(folded, '-K2 contacts')).toEqual([
      [undefined, 0],
      [5000, 1],
      [8000, 0],
    ]);
    const whole = signalsIn('brine-pump', acts, true);
    expect(whole.operateTimes).toBe(true);
    const late = whole.signals.find(({ id }) => id === '-K2 contacts')!.changes[1]!;
    expect(whole.moments[late.at]).toBeGreaterThan(5000);
    expect(whole.moments[late.at]).toBeLessThan(5100);
    // On their way they are seen to be.
    expect(whole.moments[late.since!]).toBeLessThan(whole.moments[late.at]!);
  });

  it('agree with the slow run on where everything ends, and on the order in which the lines change', () => {
    for (let seed = 0; seed < 60; seed++) {
      const circuit = randomCircuit(diceOf(seed), { paths: 5, sheets: 1, odd: 0 });
      const buttons = circuit.devices.filter(({ kind }) => kind === 'push-button').slice(0, 2);
      const acts =
        buttons.map(({ name }) => `press ${name}; wait 3 s; release ${name}`).join('; ') || 'wait 1 s';
      const [folded, slow] = [false, true].map((operateTimes) =>
        signalsOf(circuit, scenario(`${acts}; wait 30 s`), plainLetters, operateTimes),
      ) as [Signals, Signals];
      if (folded.operateTimes) continue;
      for (const { id, of, changes } of folded.signals) {
        const same = slow.signals.find((signal) => signal.id === id);
        // What is over within milliseconds isn't seen where they are folded, and the other way round.
        if (same) expect(same.changes.at(-1)!.level, `seed ${seed} ${id} ${of}`).toBe(changes.at(-1)!.level);
      }
    }
  });

  it('take the times that relays have where something never rests', () => {
    const buzzer = circuitOf(
      `
supply A 24 V DC
-S1 push-button make
-K1 relay
-H1 lamp
A:L+ -S1:13-14 -K1:11-12 -K1:A1-A2 A:L-
A:L+ -K1:21-24 -H1:X1-X2 A:L-`.replace('-K1 relay', '-K1 relay 2 poles'),
    );
    const shown = signalsOf(buzzer, scenario('press -S1'), plainLetters, false);
    expect(shown.operateTimes).toBe(true);
    expect(shown.signals.find(({ id }) => id === '-K1 contacts')!.changes.length).toBeGreaterThan(10);
  });

  it('have a half height only for what is between its limits', () => {
    const dim = circuitOf(`
supply A 24 V DC
-S1 push-button make
-H1 lamp
-H2 lamp
A:L+ -S1:13-14 -H1:X1-X2 -H2:X1-X2 A:L-`);
    const halves = (circuit: Circuit, acts: string, operateTimes: boolean): string[] =>
      signalsOf(circuit, scenario(acts), plainLetters, operateTimes).signals.flatMap(({ id, changes }) =>
        changes.some(({ level }) => level === 0.5) ? [id] : [],
      );
    for (const operateTimes of [false, true]) {
      expect(halves(dim, 'press -S1', operateTimes)).toEqual(['-H1', '-H2']);
      expect(halves(galleryCircuit('brine-pump'), 'make -B1; wait 8 s', operateTimes)).toEqual([]);
    }
  });

  it('keep one scale all along the axis, and leave out long times only where the short ones need it, marked', () => {
    const written = { text: english.drawing.timing.moment, width: (text: string) => text.length * 6 };
    const even = scaleOf([0, 2000, 9000], 100, 900, written);
    expect(even.gaps).toEqual(['scale', 'scale']);
    const [zero, two, nine] = even.x as [number, number, number];
    expect((nine - zero) / (two - zero)).toBeCloseTo(4.5);
    const cut = scaleOf([0, 2, 7, 9, 5000, 5003], 100, 900, written);
    expect(cut.gaps).toEqual(['scale', 'scale', 'scale', 'cut', 'scale']);
    const wide = cut.x.slice(1).map((x, index) => x - cut.x[index]!);
    // To scale on both sides of what is left out: 2, 5, 2 and 3 ms.
    expect(wide[1]! / wide[0]!).toBeCloseTo(2.5);
    expect(wide[2]! / wide[0]!).toBeCloseTo(1);
    expect(wide[4]! / wide[0]!).toBeCloseTo(1.5);
    expect(Math.max(...cut.x)).toBeLessThanOrEqual(900);
    // Where no time passes there is no scale, and where none passes at all no time is told.
    const order = scaleOf([0, 0, 4000], 100, 900, written);
    expect(order.gaps).toEqual(['order', 'scale']);
    const still = scaleOf([0, 0, 0], 100, 900, written);
    expect(still.gaps).toEqual(['order', 'order']);
    expect(still.ticks).toEqual([]);
  });

  it('never let times on the axis touch, nor moments change their order', () => {
    for (let seed = 0; seed < 300; seed++) {
      const random = randomOf(`axis ${seed}`);
      const moments = [0];
      for (let index = random.int(1, 25); index > 0; index--)
        moments.push(
          moments.at(-1)! + random.pick([0, 1, 3, 500, 2000, 60_000, 3_600_000]) * random.int(1, 9),
        );
      const written = { text: english.drawing.timing.moment, width: (text: string) => text.length * 6 };
      const { x, gaps, ticks, to } = scaleOf(moments, 50, random.pick([340, 980]), written);
      expect(
        x.every((place, index) => index === 0 || place > x[index - 1]!),
        `seed ${seed}`,
      ).toBe(true);
      expect(x.at(-1)!).toBeLessThanOrEqual(to + 1e-6);
      expect(gaps.map((gap) => gap === 'order')).toEqual(
        gaps.map((_, index) => moments[index] === moments[index + 1]),
      );
      const perMs = gaps.flatMap((gap, index) =>
        gap === 'scale' ? [(x[index + 1]! - x[index]!) / (moments[index + 1]! - moments[index]!)] : [],
      );
      for (const each of perMs) expect(each / perMs[0]!).toBeCloseTo(1, 6);
      ticks.slice(1).forEach(({ text, textAt }, index) => {
        const before = ticks[index]!;
        const room = (written.width(text) + written.width(before.text)) / 2;
        expect(textAt - before.textAt, `seed ${seed}`).toBeGreaterThan(room);
      });
    }
  });

  it('explain the signs that are there, and no others', () => {
    const textOf = (acts: string, operateTimes = false): string =>
      svgOf(timingPicture(english, galleryCircuit('mist-line'), scenario(acts), { operateTimes }), {});
    const { key, withTimes, withoutTimes } = english.drawing.timing;
    const still = textOf('press -S1; release -S1; press -S0');
    expect(wellFormed(still)).toEqual([]);
    for (const text of [key.high, key.low, key.order, withoutTimes]) expect(still).toContain(text);
    for (const text of [key.cut, key.between, key.onItsWay, withTimes]) expect(still).not.toContain(text);
    const whole = textOf('press -S1; wait 5 s; release -S1; wait 9 s', true);
    for (const text of [key.cut, key.onItsWay, withTimes]) expect(whole).toContain(text);
    for (const text of [key.between, withoutTimes]) expect(whole).not.toContain(text);
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
