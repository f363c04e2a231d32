/** A kind of device that the program hasn't got, added from here alone: what a kind needs is its own files and its lines in the registries. */
import { describe, expect, it, vi } from 'vitest';
import { z } from 'zod';
import type { Device, Rating } from '../../shared/circuit.ts';
import type { QuestionOf } from '../../shared/question.ts';

/** A push-button with a lamp in its cap. */
const KIND = 'lit-button';
/** The symbol of the lamp in the cap. */
const CAP = 'lit-cap';

interface LitButton {
  readonly kind: typeof KIND;
  readonly name: string;
  readonly text?: string;
  readonly rating: Rating;
  readonly contacts: Extract<Device, { kind: 'push-button' }>['contacts'];
}

vi.mock('../../shared/devices/index.ts', async (original) => {
  const { device } = await original<typeof import('../../shared/devices/index.ts')>();
  const { base, contacts, rating } = await import('../../shared/devices/fields.ts');
  const litButton = z.strictObject({ kind: z.literal(KIND), ...base, contacts, rating });
  return { device: z.discriminatedUnion('kind', [...device.options, litButton]) };
});

vi.mock('../../src/circuit/devices/registry.ts', async (original) => {
  const { DEVICES } = await original<typeof import('../../src/circuit/devices/registry.ts')>();
  const { switchingDevice } = await import('../../src/circuit/anatomy/switching.ts');
  const litButton = {
    anatomy({ name, contacts, rating: { volts, current } }: LitButton) {
      const button = switchingDevice({ name, positions: ['rest', 'pressed'], contacts });
      const lamp = { from: 'X1', to: 'X2', role: 'lamp', ohms: volts * volts, volts, current };
      return { ...button, terminals: ['X1', 'X2', ...button.terminals], loads: [lamp] };
    },
    verbs: ['press', 'release'],
    movedBy: 'hand',
    momentary: true,
    stands: ['notPressed', 'pressed'],
  };
  const all = { ...DEVICES, [KIND]: litButton };
  return { DEVICES: all, traitsOf: (device: Device) => all[device.kind] };
});

vi.mock('../../src/circuit/notation/grammars.ts', async (original) => {
  const { GRAMMARS } = await original<typeof import('../../src/circuit/notation/grammars.ts')>();
  const { CONTACTS_NEEDED, grammar, rating } = await import('../../src/circuit/notation/grammar.ts');
  const { contacts, label } = await import('../../src/circuit/notation/options.ts');
  return { GRAMMARS: { ...GRAMMARS, [KIND]: grammar([contacts(), rating, label], {}, CONTACTS_NEEDED) } };
});

vi.mock('../../src/drawing/devices/registry.ts', async (original) => {
  const { DRAWN } = await original<typeof import('../../src/drawing/devices/registry.ts')>();
  const all = { ...DRAWN, [KIND]: { letter: () => 'S', actuator: 'push', load: CAP } };
  return { DRAWN: all, drawnAs: (device: Device) => all[device.kind] };
});

vi.mock('../../src/drawing/symbols/registry.ts', async (original) => {
  const { SYMBOLS } = await original<typeof import('../../src/drawing/symbols/registry.ts')>();
  const { box, HEIGHT, lead } = await import('../../src/drawing/symbols/art.ts');
  const { loadEffect, pulse } = await import('../../src/drawing/symbols/symbol.ts');
  const cap: import('../../src/drawing/symbols/symbol.ts').PartSymbol = {
    sort: 'load',
    said: 'whole',
    art: () => ({
      left: 13,
      right: 13,
      height: HEIGHT,
      rest: [],
      strokes: () => [box(-12, 13, 12, 31), lead(0, [0, 0], [0, 13]), lead(1, [0, 31], [0, HEIGHT])],
    }),
    effect: loadEffect(() => box(-12, 13, 12, 31), pulse(0, 22)),
  };
  const all = { ...SYMBOLS, [CAP]: cap };
  return { SYMBOLS: all, symbolOf: (form: keyof typeof SYMBOLS) => all[form] };
});

vi.mock('../../src/drawing/text/signs.ts', async (original) => {
  const signs = await original<typeof import('../../src/drawing/text/signs.ts')>();
  const { body, boxCells } = await import('../../src/drawing/text/sign.ts');
  const cap: import('../../src/drawing/text/sign.ts').Sign = {
    cells: boxCells(2, 3),
    write: body(({ filled }) => [`<${filled === ' ' ? 'cap' : filled.repeat(3)}>`, -2]),
  };
  return { ...signs, SIGNS: { ...signs.SIGNS, [CAP]: cap } };
});

vi.mock('../../src/words/en/devices.ts', async (original) => {
  const words = await original<typeof import('../../src/words/en/devices.ts')>();
  return { ...words, deviceKinds: { ...words.deviceKinds, [KIND]: 'illuminated push-button' } };
});

const circuits = await import('../../src/circuit/index.ts');
const drawing = await import('../../src/drawing/index.ts');
const questions = await import('../../src/questions/index.ts');
const generator = await import('../../src/generator/index.ts');
const { circuit: circuitSchema } = await import('../../shared/circuit.ts');
const { Board } = await import('../../src/generator/board.ts');
const { addRelay, addSource } = await import('../../src/generator/devices/index.ts');
const { hop } = await import('../../src/generator/devices/coil-part.ts');
const { SIGNALS } = await import('../../src/generator/sources.ts');
const { finish } = await import('../../src/generator/finish.ts');
const { solve } = await import('../../src/solver/index.ts');
const { liveActs } = await import('../../src/web/engine/live-acts.ts');
const { spotsOf } = await import('../../src/web/engine/spots.ts');
const { english, layOut, refusedWith } = await import('../support/in-english.ts');

const TEXT = `supply A 24 V DC
-S1  lit-button make break 21-22 "Ice crusher"
-K1  relay 2 poles

A:L+  -S1:13-14  -K1:A1-A2  A:L-
A:L+  -K1:11-14  -S1:X1-X2  A:L-
`;

function circuitOf(text: string) {
  const read = circuits.readCircuit(text);
  if (!read.ok) throw new Error(JSON.stringify(refusedWith(read)));
  return read.value;
}

function actsOf(text: string, circuit = circuitOf(TEXT)) {
  const read = circuits.readActs(text, circuit);
  if (!read.ok) throw new Error(JSON.stringify(refusedWith(read)));
  return read.value;
}

const scenarioOf = (acts: string) => ({ start: 'live' as const, faults: [], acts: actsOf(acts) });

describe('a kind of device added from outside', () => {
  it('is read and written in the notation and as JSON', () => {
    const circuit = circuitOf(TEXT);
    expect(circuit.devices[0]).toEqual({
      kind: KIND,
      name: '-S1',
      text: 'Ice crusher',
      rating: { volts: 24, current: 'DC' },
      contacts: [
        { form: 'make', terminals: ['13', '14'] },
        { form: 'break', terminals: ['21', '22'] },
      ],
    });
    expect(circuits.writeCircuit(circuit)).toBe(TEXT.replace(' 21-22', ''));
    expect(circuitSchema.safeParse(circuit).success).toBe(true);
    expect(circuits.readCircuitJson(JSON.stringify(circuit))).toEqual({ ok: true, value: circuit });
  });

  it('is refused with what is wrong with it', () => {
    const [noContact] = refusedWith(circuits.readCircuit(TEXT.replace(' make break 21-22', '')));
    expect(noContact).toMatchObject({ code: 'missing-option', line: 2 });
    const [slip] = refusedWith(circuits.readCircuit(TEXT.replace('lit-button', 'lit-buton')));
    expect(slip!.code).toBe('unknown-kind');
    expect(JSON.stringify(slip)).toContain(KIND);
    const [turned] = refusedWith(circuits.readActs('turn -S1 Hand', circuitOf(TEXT)));
    expect(turned!.code).toBe('act-not-possible');
    expect(JSON.stringify(turned)).toContain('press -S1');
    const [joined] = refusedWith(circuits.readCircuit(TEXT.replace('-S1:13-14', '-S1:13-X2')));
    expect(joined!.code).toBe('no-way-through');
  });

  it('is made of its contacts and its lamp, and keeps the drawing rules', () => {
    const circuit = circuitOf(TEXT);
    expect(circuits.terminalsOf(circuit.devices[0]!)).toEqual(['X1', 'X2', '13', '14', '21', '22']);
    expect(circuits.checkRules(circuit)).toEqual([]);
    const wrong = circuitOf(TEXT.replace('break 21-22', 'break 21-22 230 V DC'));
    expect(circuits.checkRules(wrong).map(({ code }) => code)).toEqual(['wrong-voltage']);
  });

  it('is acted upon and solved', () => {
    const circuit = circuitOf(TEXT);
    expect(circuits.writeActs(circuits.actsOn(circuit.devices[0]!))).toBe('press -S1; release -S1');
    expect(solve(circuit, scenarioOf('press -S1')).solution.lamps).toEqual({ '-S1': 'lit' });
    expect(solve(circuit, scenarioOf('press -S1; release -S1')).solution.lamps).toEqual({ '-S1': 'dark' });
    expect(circuits.writeActs(liveActs(circuit, actsOf('press -S1')))).toContain('release -S1');
  });

  it('is drawn with its symbol, at rest and in a state, for whoever sees it and whoever does not', () => {
    const circuit = circuitOf(TEXT);
    const state = drawing.shownState(solve(circuit, scenarioOf('press -S1')), ['-S1']);
    const columns = 80;
    expect(drawing.drawText(english, circuit, { columns })).toContain('<cap>');
    expect(drawing.drawText(english, circuit, { columns })).toContain('E╌╲');
    expect(drawing.drawText(english, circuit, { columns, state })).toContain('<███>');
    const scene = layOut(circuit, drawing.PROFILES.screen);
    const symbols = scene.sheets[0]!.symbols.map(({ form, device }) => `${device} ${form}`);
    expect(symbols.toSorted()).toEqual(['-K1 coil', '-K1 make', `-S1 ${CAP}`, '-S1 make']);
    const rest = drawing.drawSvg(scene, 0);
    const pressed = drawing.drawSvg(scene, 0, { state });
    for (const svg of [rest, pressed]) expect(svg).toContain('-S1');
    expect(pressed).not.toBe(rest);
    const spots = spotsOf(scene.sheets[0]!).filter(({ item }) => item === '-S1');
    expect(spots.map(({ kind }) => kind).toSorted()).toEqual(['contact', 'load']);
    expect(drawing.describe(english, circuit)).toContain('illuminated push-button -S1 "Ice crusher"');
  });

  it('is told of in time', () => {
    const circuit = circuitOf(TEXT);
    const { steps } = drawing.stepsOf(circuit, scenarioOf('press -S1'));
    const captions = steps.map(({ caption }) => drawing.tellCaption(english, caption)).join(' ');
    expect(captions).toContain('Press -S1 ("Ice crusher").');
    expect(captions).toContain('-S1 ("Ice crusher") lights.');
    const timing = drawing.timingText(english, circuit, scenarioOf('press -S1'), { columns: 80 });
    expect(timing.match(/^-S1/gm)).toHaveLength(2);
  });

  it('is put on a drawing by the generator, asked about, marked and explained', () => {
    const answers = new Set<string>();
    let chosen = 0;
    for (let seed = 0; seed < 8; seed++) {
      const random = generator.randomOf(`toy ${seed}`);
      const board = new Board(random.child('board'));
      const source = addSource(board, SIGNALS.inputs, 'Control supply');
      const name = board.name('S');
      const contacts = [{ form: 'make', terminals: ['13', '14'] }];
      board.add({ kind: KIND, name, text: 'Ice crusher', rating: source.rating, contacts } as never);
      const relay = addRelay(board, source, { poles: 2 });
      board.line(source, 'control', [hop(name, '13', '14'), relay.coil]);
      board.line(source, 'lamps', [seed % 2 ? relay.made() : relay.rest(), hop(name, 'X1', 'X2')]);
      const draft = finish(random, board, {
        family: 'toy',
        title: 'Ice works: crusher',
        sheets: 1,
        acts: [[{ kind: 'press', device: name }]],
      });
      const lamp = draft.circuit.devices.find(({ kind }) => kind === (KIND as string))!.name;
      const place = draft.lamps.indexOf(lamp);
      const [accepted] = generator.accept([draft], { plain: true });
      expect(accepted).toMatchObject({ kind: 'accepted' });
      expect(accepted?.kind === 'accepted' && accepted.after.lamps[place]).toBe(seed % 2 ? 'lit' : 'dark');
      expect(generator.fingerprint(draft.circuit)).toMatch(/\w/);
      const question: QuestionOf<'lamp-states'> = {
        kind: 'lamp-states',
        family: draft.family,
        circuit: draft.circuit,
        scenario: draft.scenario,
        asked: [lamp],
      };
      expect(questions.checkQuestion(question)).toEqual([]);
      const asked = questions.tellQuestion(english, questions.askQuestion(question));
      expect(asked.items[0]!.label).toContain(`${lamp} "Ice crusher"`);
      const right = questions.rightAnswer(question);
      answers.add(JSON.stringify(Object.values((right as { states: object }).states)));
      // The generator's own questions have it among others.
      const proposed = questions.proposeQuestion(draft, ['lamp-states'], random.child('proposed'));
      chosen += Number(proposed?.kind === 'lamp-states' && proposed.asked.includes(lamp));
      const marking = questions.markAnswer(question, right);
      expect(marking.mark).toMatchObject({ share: 1, correct: true });
      const told = questions.tellMark(english, marking, questions.explain(question)).explanation;
      expect(JSON.stringify(told)).toContain(lamp);
    }
    expect(answers).toEqual(new Set(['["lit"]', '["dark"]']));
    expect(chosen).toBeGreaterThan(0);
  });
});
