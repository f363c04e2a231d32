import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import { readActs, readCircuit } from '../../src/circuit/index.ts';
import { drawSvgs, PROFILES, picturesOf, type Scene, shownState } from '../../src/drawing/index.ts';
import type { Group, Ink, Picture } from '../../src/drawing/picture/types.ts';
import { REST } from '../../src/drawing/states/shown-state.ts';
import { waysOf } from '../../src/drawing/states/way-lines.ts';
import { solve } from '../../src/solver/index.ts';
import { layOut } from '../support/in-english.ts';
import { galleryCircuit } from './gallery-circuits.ts';

function solvedAfter(circuit: Circuit, acts: string) {
  const read = readActs(acts);
  if (!read.ok) throw new Error(acts);
  return solve(circuit, { start: 'live', faults: [], acts: [...read.value] });
}

const groupOf = (picture: Picture, part: string): Group => {
  const found = picture.items.find((item): item is Group => item.kind === 'group' && item.part === part);
  if (!found) throw new Error(part);
  return found;
};

const inksOf = ({ items }: Group): Ink[] =>
  items.flatMap((item) => (item.kind === 'shape' ? [item.ink] : []));

const netWith = (scene: Scene, terminal: string): number =>
  scene.conductors.findIndex((terminals) => terminals.includes(terminal));

function inkOfNet(picture: Picture, net: number): Ink | undefined {
  const found = picture.items.find((item) => item.kind === 'shape' && item.net === net);
  return found?.kind === 'shape' ? found.ink : undefined;
}

describe('a drawing in a state', () => {
  const circuit = galleryCircuit('vent-fan');
  const scene = layOut(circuit, PROFILES.screen);

  it('has the path to what is asked picked out under its conductors, and arrows over them', () => {
    const solved = solvedAfter(circuit, '');
    const lit = Object.entries(solved.solution.lamps).flatMap(([lamp, state]) =>
      state === 'lit' ? [lamp] : [],
    );
    expect(lit.length).toBeGreaterThan(0);
    const inks = (asked: readonly string[]): Ink[] =>
      picturesOf(scene, shownState(solved, asked))
        .picture(0)
        .items.flatMap((item) => (item.kind === 'shape' ? [item.ink] : []));
    const shown = inks(lit);
    // The lines, then the leads of the symbols on them; then conductors, then arrows.
    expect(shown.filter((ink) => ink === 'fed')).toHaveLength(2);
    expect(shown.indexOf('fed')).toBeLessThan(shown.indexOf('live'));
    expect(shown.indexOf('fed-arrow')).toBeGreaterThan(shown.indexOf('live'));
    expect(inks([]).filter((ink) => ink.startsWith('fed'))).toEqual([]);
  });

  it('shows what flashes by a sign of its own, over a live conductor and over a dead one, and never filled as lit', () => {
    const read = readCircuit(`supply A 24 V DC
-K1 flasher 1 s on 1 s off
-H1 lamp
-H2 lamp
-P1 sounder
-H3 lamp
A:L+ -K1:A1-A2 A:L-
A:L+ -K1:15-18 -H1:X1-X2 A:L-
-K1:16 -H2:X1-X2 A:L-
-K1:18 -P1:X1-X2 A:L-
A:L+ -H3:X1-X2 A:L-`);
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const blinking = layOut(read.value, PROFILES.screen);
    const live = new Set<boolean>();
    for (const acts of ['wait 500 ms', 'wait 1500 ms']) {
      const state = shownState(solvedAfter(read.value, acts));
      const picture = picturesOf(blinking, state).picture(0);
      const shapes = (part: string, ink: Ink) =>
        groupOf(picture, part).items.flatMap((item) =>
          item.kind === 'shape' && item.ink === ink ? [item.d] : [],
        );
      expect(shapes('-H3:X1', 'ray')).toHaveLength(3);
      const [whole] = shapes('-H3:X1', 'lit');
      for (const lamp of ['-H1:X1', '-H2:X1']) {
        live.add(inkOfNet(picture, netWith(blinking, lamp)) === 'live');
        expect(shapes(lamp, 'ray')).toEqual(shapes('-H1:X1', 'ray'));
        expect(shapes(lamp, 'ray')).toHaveLength(1);
        expect(shapes(lamp, 'lit')).toHaveLength(2);
        expect(shapes(lamp, 'lit')).not.toContain(whole);
      }
      expect(shapes('-P1:X1', 'lit')).toEqual([]);
      expect(shapes('-P1:X1', 'ray')).toHaveLength(1);
    }
    expect(live).toEqual(new Set([true, false]));
  });

  it('says below the drawing, or in the title block of a page, which state is shown', () => {
    const note = 'Drawn with the supply on, after: make -B1';
    const [sheet] = layOut(circuit, PROFILES.screen, { note }).sheets;
    const said = sheet?.texts.filter(({ text }) => text === note) ?? [];
    expect(said).toHaveLength(1);
    const lowest = Math.max(...(sheet?.symbols.map(({ bottom }) => bottom) ?? []));
    expect(said[0]?.y).toBeGreaterThan(lowest);
    const [page] = layOut(circuit, PROFILES.a4, { note }).sheets;
    const block = page?.texts.filter(({ role }) => role === 'title').map(({ text }) => text) ?? [];
    expect(block.join(' ')).toContain(note);
    expect(block.join(' ')).not.toContain('at rest');
  });

  it('has ink of its own on what is lit: letters and crosses in the filled half alone', () => {
    const inks = (state: 'lit' | 'dim' | 'dark') =>
      inksOf(groupOf(picturesOf(scene, { ...REST, loads: new Map([['-H1', state]]) }).picture(0), '-H1:X1'));
    expect(inks('lit').filter((ink) => ink === 'on-lit')).toHaveLength(1);
    expect(inks('dim').filter((ink) => ink === 'on-lit')).toHaveLength(1);
    expect(inks('dark')).not.toContain('on-lit');
    const crossIn = (state: 'lit' | 'dim') =>
      groupOf(
        picturesOf(scene, { ...REST, loads: new Map([['-H1', state]]) }).picture(0),
        '-H1:X1',
      ).items.flatMap((item) =>
        item.kind === 'shape' && item.ink === 'on-lit' ? [item.d.split('M').length - 1] : [],
      );
    expect([crossIn('lit'), crossIn('dim')]).toEqual([[4], [2]]);
  });

  it('writes texts in one line where there is width for it', () => {
    const texts = (width: 'screen' | 'phone') =>
      layOut(circuit, PROFILES[width]).sheets.flatMap((each) => each.texts.map(({ text }) => text));
    for (const text of ['Control supply', 'Fan tripped', 'Fan healthy'])
      expect(texts('screen')).toContain(text);
  });

  it('at rest is the drawing itself', () => {
    expect(drawSvgs(scene, { state: REST })).toEqual(drawSvgs(scene));
  });

  it('fills energised coils and lit lamps, and colours energised conductors', () => {
    const rest = picturesOf(scene, shownState(solvedAfter(circuit, ''))).picture(0);
    expect(inksOf(groupOf(rest, '-K3:A1'))).not.toContain('lit');
    expect(inksOf(groupOf(rest, '-H1:X1'))).toContain('lit');
    expect(inksOf(groupOf(rest, '-H2:X1'))).not.toContain('lit');
    expect(inkOfNet(rest, netWith(scene, '-F1:2'))).toBe('live');
    expect(inkOfNet(rest, netWith(scene, '-K3:14'))).toBe('wire');
    const tripped = picturesOf(scene, shownState(solvedAfter(circuit, 'make -B1'))).picture(0);
    expect(inksOf(groupOf(tripped, '-K3:A1'))).toContain('lit');
    expect(inksOf(groupOf(tripped, '-H1:X1'))).not.toContain('lit');
    expect(inksOf(groupOf(tripped, '-H2:X1'))).toContain('lit');
    expect(inkOfNet(tripped, netWith(scene, '-K3:14'))).toBe('live');
    expect(inkOfNet(tripped, netWith(scene, 'A:N'))).toBe('wire');
  });

  it('moves the blade of every contact that its mechanism has moved', () => {
    const blade = (acts: string): string => {
      const group = groupOf(picturesOf(scene, shownState(solvedAfter(circuit, acts))).picture(0), '-K3:11');
      return group.items
        .flatMap((item) => (item.kind === 'shape' && /blade/.test(item.ink) ? [item.d] : []))
        .join('');
    };
    expect(blade('')).not.toBe(blade('make -B1'));
    expect(blade('make -B1; break -B1')).toBe(blade(''));
  });

  it('marks the contact that stops a load, in words of ink and shape, and no other', () => {
    const shown = shownState(solvedAfter(circuit, 'make -B1'), ['-H1']);
    const picture = picturesOf(scene, shown).picture(0);
    const marked = picture.items.filter((item) => item.kind === 'group' && inksOf(item).includes('stop'));
    expect(marked.map((item) => item.kind === 'group' && item.part)).toEqual(['-K3:11']);
  });
});

describe('the path that is picked out', () => {
  const onWire = (scene: Scene, sheet: number, x: number, y: number): boolean =>
    scene.sheets[sheet]?.wires.some(
      (wire) =>
        x >= Math.min(wire.x1, wire.x2) - 0.01 &&
        x <= Math.max(wire.x1, wire.x2) + 0.01 &&
        y >= Math.min(wire.y1, wire.y2) - 0.01 &&
        y <= Math.max(wire.y1, wire.y2) + 0.01,
    ) === true ||
    // Through a through terminal's ring.
    scene.sheets[sheet]?.symbols.some(
      ({ form, x: line, top, bottom }) => form === 'terminal' && x === line && y >= top && y <= bottom,
    ) === true;

  it.each([
    ['vent-fan', 'make -B1'],
    ['mist-line', 'press -S1; release -S1'],
    ['ramp-hoist', 'press -S2'],
    ['brine-pump', 'make -B1; wait 6 s'],
    ['two-supplies', ''],
    ['two-switches', ''],
  ] as const)('in %s after "%s" runs along conductors from pole to pole, at every width', (name, acts) => {
    const circuit = galleryCircuit(name);
    const { solution } = solvedAfter(circuit, acts);
    const fed = solution.trace.filter((trace) => trace.fed);
    expect(fed.length).toBeGreaterThan(0);
    for (const width of ['phone', 'screen', 'a4'] as const) {
      const scene = layOut(circuit, PROFILES[width]);
      for (const { load, path } of fed) {
        const { lines, symbols } = waysOf(scene, [path]);
        lines.forEach((list, sheet) => {
          for (const { x1, y1, x2, y2 } of list)
            for (const share of [0, 0.3, 0.7, 1])
              expect(
                onWire(scene, sheet, x1 + (x2 - x1) * share, y1 + (y2 - y1) * share),
                `${load} ${width}`,
              ).toBe(true);
        });
        // Every port that the path goes through is an end of one of its lines.
        const ends = lines.flatMap((list, sheet) =>
          list.flatMap(({ x1, y1, x2, y2 }) => [`${sheet} ${x1} ${y1}`, `${sheet} ${x2} ${y2}`]),
        );
        for (const { device, enter, leave } of path) {
          if (leave === undefined) continue;
          // A three-terminal motor's star point is inside it.
          for (const terminal of [enter, leave].filter((name) => name !== '*')) {
            const places = scene.sheets.flatMap((sheet, index) =>
              sheet.symbols.flatMap(({ ports }) =>
                ports
                  .filter((port) => port.terminal === `${device}:${terminal}`)
                  .map(({ x, y }) => `${index} ${x} ${y}`),
              ),
            );
            expect(
              places.some((place) => ends.includes(place)),
              `${load} ${device}:${terminal} ${width}`,
            ).toBe(true);
          }
        }
        expect(symbols.size).toBe(
          new Set(
            path
              .filter(({ leave }) => leave !== undefined)
              .map(({ device, enter }) => (device.startsWith('-M') ? device : `${device}:${enter}`)),
          ).size,
        );
      }
    }
  });
});
