/**
 * The drawing against the conventions of the trade, each with its source. "From memory": the clause or symbol number was
 * not seen in its source while this was written.
 */
import { describe, expect, it } from 'vitest';
import { readCircuit } from '../../src/circuit/index.ts';
import { PROFILES, renameFor, type SceneSymbol } from '../../src/drawing/index.ts';
import { poseOf } from '../../src/drawing/scene/pose.ts';
import { type Stroke, symbolFor } from '../../src/drawing/symbols/index.ts';
import { galleryCircuit } from '../drawing/gallery-circuits.ts';
import { layOut } from '../support/in-english.ts';

const sceneOf = (name: Parameters<typeof galleryCircuit>[0]) => layOut(galleryCircuit(name), PROFILES.screen);

const contact = (form: SceneSymbol['form'], flipped = false) =>
  symbolFor({ form, flipped, terminals: form === 'changeover' ? 3 : 2, above: true });

/** The free end of the blade, from its pivot. */
function blade(strokes: readonly Stroke[]): { x: number; y: number; fromX: number; fromY: number } {
  const found = strokes.find((stroke) => stroke.kind === 'line' && stroke.blade);
  if (found?.kind !== 'line') throw new Error('no blade');
  const [pivot, end] = found.points;
  return { fromX: pivot?.[0] ?? 0, fromY: pivot?.[1] ?? 0, x: end?.[0] ?? 0, y: end?.[1] ?? 0 };
}

const pose = (closed: readonly boolean[]) => ({ closed, ports: [] });

describe('IEC 61082-1 (from memory)', () => {
  it('draws everything at rest: de-energised and unactuated', () => {
    for (const name of ['vent-fan', 'mist-line', 'ramp-hoist', 'brine-pump'] as const)
      for (const symbol of sceneOf(name).sheets.flatMap((sheet) => sheet.symbols)) {
        const closed = poseOf(symbol, 0).closed;
        if (symbol.form === 'make' || symbol.form === 'main-make' || symbol.form === 'isolator-pole')
          expect(closed, symbol.id).toEqual([false]);
        if (symbol.form === 'break') expect(closed, symbol.id).toEqual([true]);
        if (symbol.form === 'changeover') expect(closed, symbol.id).toEqual([true, false]);
      }
  });

  it('stands current paths upright between the supply conductors, numbered from left to right', () => {
    const [sheet] = sceneOf('mist-line').sheets;
    const numbers = sheet?.texts.filter(({ role }) => role === 'path') ?? [];
    const across = [...numbers].sort((a, b) => a.x - b.x).map(({ text }) => text);
    expect(across).toEqual(['1', '2', '3', '4', '5']);
    const rails = sheet?.marks.filter(({ kind }) => kind === 'supply') ?? [];
    const [feed, back] = ['A:L+', 'A:L-'].map(
      (name) => rails.find(({ names }) => names.includes(name))?.y ?? Number.NaN,
    );
    for (const symbol of sheet?.symbols ?? []) {
      expect(symbol.top).toBeGreaterThan(feed as number);
      expect(symbol.bottom).toBeLessThan(back as number);
    }
  });

  it('stands coils and lamps in one row at the return side', () => {
    for (const name of ['vent-fan', 'mist-line', 'brine-pump'] as const) {
      const loads = sceneOf(name)
        .sheets.flatMap((sheet) => sheet.symbols)
        .filter(({ form }) => ['coil', 'lamp', 'valve', 'sounder'].includes(form));
      const middles = new Set(loads.map(({ top, bottom }) => (top + bottom) / 2));
      expect(loads.length).toBeGreaterThan(2);
      expect(middles.size, name).toBe(1);
    }
  });

  it('lists under each coil its contacts with sheet and path, and what is free', () => {
    const scene = sceneOf('two-supplies');
    const list = scene.sheets
      .flatMap((sheet) => sheet.texts)
      .filter(({ role, of }) => role === 'list' && of === '-K1:A1');
    expect(list.map(({ text }) => text)).toEqual(['11-12-14 /1.2', '21-22-24 /2.2']);
    for (const { text } of list) {
      const [terminals = '', place = ''] = text.split(' ');
      const [sheet, path] = place.slice(1).split('.').map(Number);
      const drawn = scene.sheets.find((one) => one.sheet === sheet);
      const symbol = drawn?.symbols.find(({ id }) => id === `-K1:${terminals.split('-')[0]}`);
      const number = drawn?.texts.find(({ role, text: name }) => role === 'path' && Number(name) === path);
      expect(Math.abs((symbol?.x ?? 0) - ((number?.x ?? 0) + (number?.width ?? 0) / 2))).toBeLessThan(20);
    }
  });

  it('shows at each contact of a relay where its coil is', () => {
    const scene = sceneOf('two-supplies');
    const places = scene.sheets.flatMap((sheet) => sheet.texts).filter(({ role }) => role === 'place');
    expect(places.map(({ of, text }) => `${of} ${text}`).sort()).toEqual(['-K1:11 /1.1', '-K1:21 /1.1']);
  });

  it('draws a dot where conductors join, and none where they cross', () => {
    const [sheet] = sceneOf('ramp-hoist').sheets;
    const dots = new Set(sheet?.dots.map(({ x, y }) => `${x} ${y}`));
    let [joints, crossings] = [0, 0];
    const within = (at: number, one: number, other: number) =>
      at >= Math.min(one, other) && at <= Math.max(one, other);
    for (const flat of sheet?.wires ?? [])
      for (const upright of sheet?.wires ?? []) {
        if (flat.y1 !== flat.y2 || upright.x1 !== upright.x2) continue;
        const [x, y] = [upright.x1, flat.y1];
        if (!within(x, flat.x1, flat.x2) || !within(y, upright.y1, upright.y2)) continue;
        const endsFlat = x === flat.x1 || x === flat.x2;
        const endsUpright = y === upright.y1 || y === upright.y2;
        // A corner is neither.
        if (endsFlat && endsUpright) continue;
        expect(dots.has(`${x} ${y}`)).toBe(flat.net === upright.net);
        if (flat.net === upright.net) joints += 1;
        else crossings += 1;
      }
    expect(joints).toBeGreaterThan(0);
    expect(crossings).toBeGreaterThan(0);
  });
});

describe('IEC 60617 shapes (numbers from memory)', () => {
  it('moves the blade of an upright contact from left to right when operated: S00227, S00229, S00230', () => {
    for (const form of ['make', 'break', 'changeover'] as const)
      for (const flipped of [false, true]) {
        const rest = form === 'make' ? [false] : form === 'break' ? [true] : [true, false];
        const art = contact(form, flipped);
        const before = blade(art.strokes(pose(rest)));
        const after = blade(art.strokes(pose(rest.map((closed) => !closed))));
        expect(after.x, `${form} ${flipped}`).toBeGreaterThan(before.x);
        expect([after.fromX, after.fromY]).toEqual([before.fromX, before.fromY]);
      }
  });

  it('draws a changeover as one symbol, the common above and both legs below, the break leg left', () => {
    const symbol = sceneOf('vent-fan').sheets[0]?.symbols.find(({ form }) => form === 'changeover');
    const [common, rest, operated] = symbol?.ports ?? [];
    expect([common?.terminal, rest?.terminal, operated?.terminal]).toEqual(['-K3:11', '-K3:12', '-K3:14']);
    expect(common?.y).toBe(symbol?.top);
    expect([rest?.y, operated?.y]).toEqual([symbol?.bottom, symbol?.bottom]);
    expect(rest?.x).toBeLessThan(common?.x ?? 0);
    expect(operated?.x).toBeGreaterThan(common?.x ?? 0);
  });

  it('draws a make at rest with a gap and a break at rest touching its fixed contact', () => {
    const fixedEnd = (strokes: readonly Stroke[]): readonly (readonly [number, number])[] => {
      const found = strokes.find((stroke) => stroke.kind === 'line' && stroke.spot === 0 && !stroke.blade);
      return found?.kind === 'line' ? found.points : [];
    };
    const make = contact('make').strokes(pose([false]));
    expect(blade(make).x).toBeLessThan(-5);
    const breaks = contact('break').strokes(pose([true]));
    const foot = fixedEnd(breaks).at(-1) ?? [0, 0];
    const { x, y, fromX, fromY } = blade(breaks);
    // The blade passes the height of the foot inside its length.
    const at = fromX + ((foot[1] - fromY) / (y - fromY)) * (x - fromX);
    expect(at).toBeGreaterThan(0);
    expect(at).toBeLessThanOrEqual(foot[0]);
  });

  it('draws fuse S00362 as a box with the wire through it, lamp S00965 as a crossed circle, coil S00305 as a box', () => {
    const kinds = (form: SceneSymbol['form']) =>
      contact(form)
        .strokes(pose([true]))
        .map((stroke) => (stroke.kind === 'line' && stroke.closed ? 'box' : stroke.kind));
    expect(kinds('fuse')).toEqual(['box', 'line']);
    expect(kinds('lamp')).toEqual(['circle', 'line', 'line', 'line', 'line']);
    expect(kinds('coil')).toEqual(['box', 'line', 'line']);
  });

  it('marks the slow-releasing coil S00311 by a filled field and the slow-operating coil S00312 by a crossed one', () => {
    const coil = (delay: 'operate' | 'release') =>
      symbolFor({ form: 'coil', delay, flipped: false, terminals: 2, above: true }).strokes(pose([]));
    expect(coil('release').some((stroke) => stroke.kind === 'line' && stroke.filled)).toBe(true);
    expect(coil('operate').some((stroke) => stroke.kind === 'line' && stroke.filled)).toBe(false);
    expect(coil('operate').length).toBe(coil('release').length + 2);
  });
});

describe('IEC 61810-1 and data sheets: a changeover breaks before it makes', () => {
  it('shows a blade that travels touching neither leg', () => {
    const { x } = blade(contact('changeover').strokes(pose([false, false])));
    const rest = blade(contact('changeover').strokes(pose([true, false])));
    const moved = blade(contact('changeover').strokes(pose([false, true])));
    expect(x).toBeGreaterThan(rest.x + 3);
    expect(x).toBeLessThan(moved.x - 3);
  });
});

describe('letters', () => {
  const read = readCircuit(`
supply P 400 V 3AC
supply A 24 V AC
-Q1 isolator 3 poles
-K1 contactor 3 mains
-K2 relay 1 pole
-F1 fuse 1 pole
-S1 push-button make
-B1 field-contact make
-H1 lamp
-Y1 valve
-M1 motor 400 V
P:L1 -Q1:1-2 -K1:1-2 -M1:U1
A:L -F1:1-2 -S1:13-14 -B1:13-14 -K1:A1-A2 A:N
-F1:2 -K2:11-14 -H1:X1-X2 A:N
-F1:2 -K2:A1-A2 A:N
-F1:2 -Y1:A1-A2 A:N
`);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const circuit = read.value;
  const names = (letters: 'old' | 'new') =>
    new Set(
      layOut(circuit, PROFILES.screen, { rename: renameFor(circuit, letters) }).sheets.flatMap((sheet) =>
        sheet.texts.filter(({ role }) => role === 'name').map(({ text }) => text),
      ),
    );

  it('old practice (IEC 60750, from memory): H lamp, K relay and contactor, S switch, F protection, Q, Y valve, M motor, B sensor', () => {
    expect(names('old')).toEqual(new Set(['-Q1', '-K1', '-K2', '-F1', '-S1', '-B1', '-H1', '-Y1', '-M1']));
  });

  it('IEC 81346-2: P lamp, K relay, Q power contactor and isolator, S switch, B sensor, F protection, M motor and valve', () => {
    // The contactor and the valve give up their letters; their numbers are taken by isolator and motor, so they get the next.
    expect(names('new')).toEqual(new Set(['-Q1', '-Q2', '-K2', '-F1', '-S1', '-B1', '-P1', '-M2', '-M1']));
  });
});
