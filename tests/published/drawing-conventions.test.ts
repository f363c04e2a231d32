/**
 * The drawing against the conventions of the trade, each with its source. "From memory": the clause or symbol number was
 * not seen in its source while this was written.
 */
import { describe, expect, it } from 'vitest';
import { readCircuit } from '../../src/circuit/index.ts';
import { PROFILES, renameFor, type SceneSymbol } from '../../src/drawing/index.ts';
import { looksOf, poseOf } from '../../src/drawing/scene/pose.ts';
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

  it('draws a closed make with its blade on the fixed contact, to be seen beside the conductor and not only as a thicker one', () => {
    for (const form of ['make', 'main-make', 'breaker-pole', 'isolator-pole', 'output'] as const) {
      const { x, y, fromX, fromY } = blade(contact(form).strokes(pose([true])));
      const lead = contact(form)
        .strokes(pose([true]))
        .find((stroke) => stroke.kind === 'line' && stroke.spot === 0 && !stroke.blade);
      const [, end = [0, 0]] = lead?.kind === 'line' ? lead.points : [];
      // Half of the width of a blade and of a conductor, as they are drawn live: so near, they touch.
      const touching = (3 + 2.4) / 2;
      const at = fromX + ((Math.max(end[1], y) - fromY) / (y - fromY)) * (x - fromX);
      expect(Math.abs(at - end[0]), form).toBeLessThanOrEqual(
        form === 'isolator-pole' ? 3.6 : touching + 0.4,
      );
      expect(x - fromX, form).toBeGreaterThan(3);
    }
  });

  it('draws fuse S00362 as a box with the wire through it, lamp S00965 as a crossed circle, coil S00305 as a box', () => {
    const kinds = (form: SceneSymbol['form']) =>
      contact(form)
        .strokes(pose([true]))
        .map((stroke) => (stroke.kind === 'line' && stroke.closed ? 'box' : stroke.kind));
    expect(kinds('fuse')).toEqual(['box', 'line']);
    expect(kinds('lamp')).toEqual(['circle', 'line', 'line', 'line', 'line', 'line', 'line']);
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

describe('power paths', () => {
  const POWER = `supply P 400 V 3AC
-Q1 isolator 3 poles
-F1 breaker 3 poles 16 A
-K1 contactor 3 main 230 V AC
-F2 overload "A text that needs more room than the poles have between them"
-M1 motor 400 V
P:L1 -Q1:1-2 -F1:1-2 -K1:1-2 -F2:1-2 -M1:U1
P:L2 -Q1:3-4 -F1:3-4 -K1:3-4 -F2:3-4 -M1:V1
P:L3 -Q1:5-6 -F1:5-6 -K1:5-6 -F2:5-6 -M1:W1`;
  const read = readCircuit(POWER);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const { sheets } = layOut(read.value, PROFILES.screen);
  const [sheet] = sheets;
  const motor = sheet?.symbols.find(({ form }) => form === 'motor') as SceneSymbol;
  const strokes = symbolFor(looksOf(motor)).strokes(poseOf(motor, 0));
  const circle = strokes.find((stroke) => stroke.kind === 'circle');
  if (circle?.kind !== 'circle') throw new Error('no motor');

  it('say what the supply is once, over its conductors, which have the names of their phases (IEC 61082-1, system text; from memory)', () => {
    const rails = sheet?.texts.filter(({ role }) => role === 'rail') ?? [];
    expect(rails.map(({ text }) => text).sort()).toEqual(['3/N/PE ~ 400 V 50 Hz', 'P:L1', 'P:L2', 'P:L3']);
    const [system, ...phases] = [...rails].sort((a, b) => a.y - b.y);
    expect(system?.text).toBe('3/N/PE ~ 400 V 50 Hz');
    expect(phases.map(({ text }) => text)).toEqual(['P:L1', 'P:L2', 'P:L3']);
  });

  it.each(['ramp-hoist', 'power'] as const)(
    'stand at one pitch, and go straight into the motor: %s',
    (name) => {
      const drawn = name === 'power' ? sheet : sceneOf(name).sheets[0];
      for (const mechanism of new Set(drawn?.links.map((link) => link.mechanism))) {
        const xs = [
          ...new Set(
            drawn?.symbols
              .filter((each) => each.mechanism === mechanism && each.form !== 'coil' && each.form !== 'break')
              .map(({ x }) => x),
          ),
        ].sort((a, b) => a - b);
        const groups = xs.length > 3 ? [] : [xs];
        for (const [a = 0, b = 0, c = 0] of groups) expect(c - b, mechanism).toBeCloseTo(b - a, 6);
      }
      const found = drawn?.symbols.find(({ form }) => form === 'motor') as SceneSymbol;
      for (const stroke of symbolFor(looksOf(found)).strokes(poseOf(found, 0))) {
        if (stroke.kind !== 'line' || stroke.spot === undefined) continue;
        expect(new Set(stroke.points.map(([x]) => x)).size).toBe(1);
        const [end] = stroke.points.slice(-1);
        expect(Math.hypot((end?.[0] ?? 0) - circle.at[0], (end?.[1] ?? 0) - circle.at[1])).toBeCloseTo(
          circle.r,
          6,
        );
      }
    },
  );

  it('have a protective conductor from a terminal of the motor to earth: IEC 60617 S00202 (from memory), three bars, each shorter', () => {
    const letter = strokes.find((stroke) => stroke.kind === 'letter' && stroke.text === 'PE');
    expect(letter).toBeDefined();
    const free = strokes.flatMap((stroke) =>
      stroke.kind === 'line' && stroke.spot === undefined ? [stroke.points] : [],
    );
    const [way, ...bars] = free;
    const [from, ...rest] = way ?? [];
    expect(Math.hypot((from?.[0] ?? 0) - circle.at[0], (from?.[1] ?? 0) - circle.at[1])).toBeCloseTo(
      circle.r,
      6,
    );
    const foot = rest.at(-1) ?? [0, 0];
    const widths = bars.map(([left, right]) => (right?.[0] ?? 0) - (left?.[0] ?? 0));
    expect(widths).toHaveLength(3);
    expect([...widths].sort((a, b) => b - a)).toEqual(widths);
    expect(bars[0]?.[0]?.[1]).toBe(foot[1]);
    for (const [left, right] of bars)
      expect(((left?.[0] ?? 0) + (right?.[0] ?? 0)) / 2).toBeCloseTo(foot[0], 6);
  });
});

describe('switches (IEC 60617, numbers from memory)', () => {
  it('draws an isolator that switches loads with the bar of a disconnector and a ring: S00290', () => {
    const strokes = contact('isolator-pole').strokes(pose([false]));
    expect(strokes.filter(({ kind }) => kind === 'circle')).toHaveLength(1);
    expect(
      strokes.some((stroke) => stroke.kind === 'line' && !stroke.blade && stroke.spot === undefined),
    ).toBe(true);
    expect(blade(strokes).x).toBeLessThan(-5);
  });

  const beside = (form: 'make' | 'break', actuator: 'mushroom' | 'elsewhere' | 'joined' | 'push' | 'limit') =>
    symbolFor({ form, actuator, flipped: false, terminals: 2, above: true }).beside?.(
      pose([form === 'break']),
    ) ?? [];
  /** An arrow in a ring: two strokes that meet at a point on the ring. */
  const rings = (strokes: readonly Stroke[]): number =>
    strokes.filter(
      (ring) =>
        ring.kind === 'circle' &&
        strokes.some(
          (head) =>
            head.kind === 'line' &&
            head.points.length === 3 &&
            Math.abs((head.points[1]?.[0] ?? 0) - ring.at[0] - ring.r) < 0.01 &&
            Math.abs((head.points[1]?.[1] ?? 0) - ring.at[1]) < 0.01,
        ),
    ).length;

  it('marks every break contact of an emergency stop as opened directly (S00226), and no make contact, and no other button', () => {
    for (const actuator of ['mushroom', 'elsewhere', 'joined'] as const) {
      expect(rings(beside('break', actuator)), actuator).toBe(1);
      expect(rings(beside('make', actuator)), actuator).toBe(0);
    }
    expect(rings(beside('break', 'push'))).toBe(0);
  });

  it('moves a limit switch by a roller: a circle round its axle', () => {
    const circles = beside('make', 'limit').flatMap((stroke) => (stroke.kind === 'circle' ? [stroke] : []));
    expect(circles).toHaveLength(2);
    expect(circles[0]?.at).toEqual(circles[1]?.at);
    expect(circles[0]?.r).toBeGreaterThan(3 * (circles[1]?.r ?? 0));
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
-F2 breaker
-S1 push-button make
-B1 field-contact make
-H1 lamp
-Y1 valve
-M1 motor 400 V
P:L1 -Q1:1-2 -K1:1-2 -M1:U1
A:L -F2:1-2 -F1:1-2 -S1:13-14 -B1:13-14 -K1:A1-A2 A:N
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

  it('old practice (IEC 60750, from memory): H lamp, K relay and contactor, S switch, F protection, miniature breakers too, Q, Y valve, M motor, B sensor', () => {
    expect(names('old')).toEqual(
      new Set(['-Q1', '-K1', '-K2', '-F1', '-F2', '-S1', '-B1', '-H1', '-Y1', '-M1']),
    );
  });

  it('IEC 81346-2: P lamp, K relay, Q power contactor and isolator, S switch, B sensor, F protection, M motor and valve', () => {
    // The contactor and the valve give up their letters; their numbers are taken by isolator and motor, so they get the next.
    expect(names('new')).toEqual(
      new Set(['-Q1', '-Q2', '-K2', '-F1', '-F2', '-S1', '-B1', '-P1', '-M2', '-M1']),
    );
  });
});
