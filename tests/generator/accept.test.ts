import { describe, expect, it } from 'vitest';
import { eachAsked, keepsRules, telling } from '../../src/generator/accept.ts';
import {
  type Acceptance,
  type Accepted,
  accept,
  type Draft,
  families,
  free,
  generate,
} from '../../src/generator/index.ts';
import { predictAll } from '../../src/misconceptions/index.ts';
import { type Machine, readState, type State, solve } from '../../src/solver/index.ts';
import { actsOf, circuitOf, scenarioOf } from '../support/written.ts';

const HEAD = 'supply A 24 V AC earthed\n';

/** A draft of a circuit written in the notation. */
function draftOf(
  text: string,
  acts: string,
  asked: Partial<Pick<Draft, 'lamps' | 'inputs' | 'relays'>>,
): Draft {
  const circuit = circuitOf(HEAD + text);
  return {
    family: 'test',
    circuit,
    scenario: { start: 'live', faults: [], acts: [...actsOf(acts, circuit)] },
    others: [],
    lamps: [],
    inputs: [],
    relays: [],
    ends: 'steady',
    ...asked,
  };
}

const judged = (draft: Draft, plain = false): Acceptance => [...accept([draft], { plain })][0]!;

const PAIR = `-B1 field-contact make
-K1 relay
-H1 lamp
-H2 lamp
A:L  -B1:13-14  -K1:A1-A2  A:N
A:L  -K1:11-12  -H1:X1-X2  A:N
-K1:11-14  -H2:X1-X2  A:N
`;
const ASKED = { lamps: ['-H1', '-H2'], relays: ['-K1'] };

describe('acceptance', () => {
  it('accepts a status pair whose signal comes, with the pictures before and after and what it tells apart', () => {
    const found = judged(draftOf(PAIR, 'make -B1', ASKED));
    expect(found).toMatchObject({
      kind: 'accepted',
      rest: { lamps: ['lit', 'dark'], relays: ['rest'] },
      after: { lamps: ['dark', 'lit'], relays: ['operated'] },
    });
    if (found.kind !== 'accepted') return;
    expect(found.tellsApart).toContain('nothing-moves');
    expect(found.tellsApartBy.lamps).toContain('make-for-break');
    expect(found.tellsApartBy.relays).not.toContain('make-for-break');
    expect(found.wrongAnswers).toBeGreaterThan(1);
  });

  it('refuses a race: two relays that lock each other out, commanded at once', () => {
    const text = `-B1 field-contact make
-K1 relay 2 poles
-K2 relay 2 poles
-H1 lamp
A:L  -B1:13-14  -K2:11-12  -K1:A1-A2  A:N
-B1:14  -K1:11-12  -K2:A1-A2  A:N
A:L  -K1:21-24  -H1:X1-X2  A:N
`;
    expect(judged(draftOf(text, 'make -B1', { lamps: ['-H1'] }))).toMatchObject({
      kind: 'refused',
      reason: 'race',
    });
  });

  it('refuses a relay that breaks its own coil, also where a flasher may run at the end', () => {
    const text = `-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
A:L  -B1:13-14  -K1:11-12  -K1:A1-A2  A:N
A:L  -K1:21-24  -H1:X1-X2  A:N
`;
    const draft = draftOf(text, 'make -B1', { lamps: ['-H1'] });
    expect(judged(draft)).toMatchObject({ kind: 'refused', reason: 'no-rest' });
    expect(judged({ ...draft, ends: 'flashing' })).toMatchObject({ kind: 'refused', reason: 'no-rest' });
  });

  it('refuses more orders of operation than are tried: five relays of which each locks out the four others', () => {
    const relays = ['-K1', '-K2', '-K3', '-K4', '-K5'];
    const text = [
      '-B1 field-contact make\n-H1 lamp',
      ...relays.map((relay) => `${relay} relay 4 poles`),
      'A:L  -B1:13-14  -H1:X1-X2  A:N',
      ...relays.map((relay, at) => {
        // The other four, each with a pole of its own for this one.
        const locks = [1, 2, 3, 4].map((pole) => `${relays[(at + pole) % 5]}:${pole}1-${pole}2`);
        return `-B1:14  ${locks.join('  ')}  ${relay}:A1-A2  A:N`;
      }),
    ].join('\n');
    expect(judged(draftOf(text, 'make -B1', { lamps: ['-H1'] }))).toMatchObject({
      kind: 'refused',
      reason: 'too-many-orders',
    });
  });

  it('refuses lamps in series: each is dim', () => {
    const text = `-B1 field-contact make
-H1 lamp
-H2 lamp
A:L  -B1:13-14  -H1:X1-X2  -H2:X1-X2  A:N
`;
    expect(judged(draftOf(text, 'make -B1', { lamps: ['-H1', '-H2'] }))).toMatchObject({
      reason: 'between',
      detail: '-H1',
    });
  });

  it('refuses what isn’t right at the beginning, although an act puts it right', () => {
    const text = `-B1 field-contact make
-H1 lamp
-H2 lamp
A:L  -H1:X1-X2  -H2:X1-X2  A:N
-H1:X2  -B1:13-14  A:N
`;
    expect(judged(draftOf(text, 'make -B1', { lamps: ['-H1', '-H2'] }))).toMatchObject({
      reason: 'between',
      detail: '-H1',
    });
  });

  it('refuses a coil fed through a lamp, which lands between its limits', () => {
    const text = `-B1 field-contact make
-H1 lamp 1 W
-K1 relay
A:L  -B1:13-14  -H1:X1-X2  -K1:A1-A2  A:N
`;
    expect(judged(draftOf(text, 'make -B1', { lamps: ['-H1'], relays: ['-K1'] }))).toMatchObject({
      reason: 'between',
    });
  });

  it('refuses a coil between its limits, of which each may just be reached, and no burnt one', () => {
    // IEC 61810-1 (from memory): operates from 85 %, releases by 15 % on alternating current: 20.4 V and 3.6 V of 24 V.
    const onVolts = (volts: number, faults = ''): Acceptance => {
      const text = `supply B ${volts} V AC
-K2 relay 24 V AC
${PAIR}B:L  -K2:A1-A2  B:N
`;
      const draft = draftOf(text, 'make -B1', ASKED);
      return judged({ ...draft, scenario: scenarioOf('make -B1', faults) });
    };
    for (const volts of [20, 12, 4])
      expect(onVolts(volts), `${volts} V`).toMatchObject({ reason: 'between', detail: '-K2' });
    for (const volts of [20.4, 24, 3.6, 3]) expect(onVolts(volts).kind, `${volts} V`).toBe('accepted');
    expect(onVolts(12, '-K2:A1-A2 open').kind).toBe('accepted');
  });

  it('looks for no limits of a dirty contact', () => {
    const draft = draftOf(PAIR, 'make -B1', ASKED);
    const faults = [{ kind: 'dirty', from: '-K1:11', to: '-K1:14', ohms: 1 }] as const;
    expect(judged({ ...draft, scenario: { ...draft.scenario, faults: [...faults] } }).kind).toBe('accepted');
  });

  it('refuses a short circuit on the way', () => {
    const text = `-F1 fuse
-B1 field-contact make
-H1 lamp
A:L  -F1:1-2  -B1:13-14  A:N
-F1:2  -H1:X1-X2  A:N
`;
    expect(judged(draftOf(text, 'make -B1', { lamps: ['-H1'] }))).toMatchObject({ reason: 'tripped' });
  });

  it('refuses a short circuit that takes the supply with it, and one of which both come', () => {
    const bare = `-B1 field-contact make
-H1 lamp
A:L  -B1:13-14  A:N
A:L  -H1:X1-X2  A:N
`;
    expect(judged(draftOf(bare, 'make -B1', { lamps: ['-H1'] }))).toMatchObject({ reason: 'tripped' });
    const both = `supply B 24 V DC
-F1 fuse
-S1 push-button make make
-H1 lamp
A:L  -F1:1-2  -S1:13-14  A:N
-F1:2  -H1:X1-X2  A:N
B:L+  -S1:23-24  B:L-
`;
    expect(judged(draftOf(both, 'press -S1', { lamps: ['-H1'] }))).toMatchObject({ reason: 'tripped' });
  });

  it('refuses an input whose voltage means neither 0 nor 1', () => {
    const text = `-B1 field-contact make
-A1 inputs 1 24V-2
A:L  -B1:13-14  -A1:I1-COM  A:N
`;
    expect(judged(draftOf(text, 'make -B1', { inputs: ['-A1:I1'] }))).toMatchObject({
      reason: 'between',
      detail: '-A1:I1',
    });
  });

  it('takes what flashes only where the draft is to end so', () => {
    const text = `-B1 field-contact make
-K5 flasher 1 s on 1 s off
-H1 lamp
-H2 lamp
A:L  -B1:13-14  -K5:A1-A2  A:N
A:L  -K5:15-18  -H1:X1-X2  A:N
-K5:16  -H2:X1-X2  A:N
`;
    const draft = draftOf(text, 'make -B1', { lamps: ['-H1', '-H2'] });
    expect(judged(draft, true)).toMatchObject({ kind: 'refused', reason: 'no-rest' });
    expect(judged({ ...draft, ends: 'flashing' }, true)).toMatchObject({
      kind: 'accepted',
      after: { lamps: ['flashing', 'flashing'] },
    });
  });

  it('lets through what stays as it was because of a fault', () => {
    const draft = draftOf(PAIR, 'make -B1', ASKED);
    const faults = [{ kind: 'open', from: '-K1:A1', to: '-K1:A2' }] as const;
    expect(judged({ ...draft, scenario: { ...draft.scenario, faults: [...faults] } })).toMatchObject({
      kind: 'accepted',
      after: { lamps: ['lit', 'dark'], relays: ['rest'] },
    });
  });

  it('takes a lamp that is lit and an input that reads 1 for one pattern, and no lamp beside an input that reads 0', () => {
    const text = (leg: string): string => `supply B 24 V DC
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
-A1 inputs 1 24V-3
A:L  -B1:13-14  -K1:A1-A2  A:N
A:L  -K1:11-14  -H1:X1-X2  A:N
B:L+  -K1:21-${leg}  -A1:I1-COM  B:L-
`;
    const asked = { lamps: ['-H1'], inputs: ['-A1:I1'] };
    expect(judged(draftOf(text('24'), 'make -B1', asked))).toMatchObject({ reason: 'one-pattern' });
    expect(judged(draftOf(text('22'), 'make -B1', asked))).toMatchObject({
      kind: 'accepted',
      after: { lamps: ['lit'], inputs: ['0'] },
    });
  });

  it('counts two that are lit of three as no pattern', () => {
    const text = `-H3 lamp\n${PAIR}-K1:14  -H3:X1-X2  A:N\n`;
    const draft = draftOf(text, 'make -B1', { ...ASKED, lamps: ['-H1', '-H2', '-H3'] });
    expect(judged(draft)).toMatchObject({ kind: 'accepted', after: { lamps: ['dark', 'lit', 'lit'] } });
  });

  it('refuses what one pattern answers and what stays as it was, unless it is asked to let it through', () => {
    const all = `-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
A:L  -B1:13-14  -K1:A1-A2  A:N
A:L  -K1:11-14  -H1:X1-X2  A:N
A:L  -K1:21-24  -H2:X1-X2  A:N
`;
    const lit = draftOf(all, 'make -B1', ASKED);
    expect(judged(lit)).toMatchObject({ kind: 'refused', reason: 'one-pattern' });
    expect(judged(lit, true)).toMatchObject({ kind: 'accepted' });
    const back = draftOf(PAIR, 'make -B1; break -B1', ASKED);
    expect(judged(back)).toMatchObject({ kind: 'refused', reason: 'as-at-rest' });
  });

  it('refuses what every misconception answers rightly', () => {
    const text = `-S1 selector A/B make B
-H1 lamp
-H2 lamp
A:L  -S1:13-14  -H1:X1-X2  A:N
A:L  -H2:X1-X2  A:N
`;
    expect(judged(draftOf(text, 'turn -S1 B', { lamps: ['-H1'] }))).toMatchObject({
      reason: 'tells-nothing-apart',
    });
  });

  it('judges each scenario of a draft, and no further than somebody reads', () => {
    const draft = draftOf(PAIR, 'make -B1', ASKED);
    const hold = { ...draft.scenario, acts: [{ kind: 'hold', device: '-K1' } as const] };
    const back = { ...draft.scenario, acts: [] };
    const several = { ...draft, others: [back, hold] };
    const looked: Draft[] = [];
    function* looking(): Generator<Draft> {
      for (const each of eachAsked(several)) {
        looked.push(each);
        yield each;
      }
    }
    expect([...accept(looking(), { plain: false })].map(({ kind }) => kind)).toEqual([
      'accepted',
      'refused',
      'accepted',
    ]);
    looked.length = 0;
    expect(accept(looking(), { plain: false }).next().value).toMatchObject({ kind: 'accepted' });
    expect(looked).toHaveLength(1);
  });

  it('judges each scenario with its own faults, and hands on a draft with that one alone', () => {
    const draft = draftOf(PAIR, '', ASKED);
    const others = ['-K1:11-12 welded', '-B1:13-14 welded', '-K1:A1-A2 open'].map((fault) =>
      scenarioOf('make -B1', fault),
    );
    const found = [
      ...accept(eachAsked({ ...draft, scenario: scenarioOf('make -B1'), others }), { plain: true }),
    ];
    expect(found.map((each) => each.kind === 'accepted' && each.after)).toEqual([
      { lamps: ['dark', 'lit'], inputs: [], relays: ['operated'] },
      { lamps: ['lit', 'dark'], inputs: [], relays: ['operated'] },
      { lamps: ['dark', 'lit'], inputs: [], relays: ['operated'] },
      { lamps: ['lit', 'dark'], inputs: [], relays: ['rest'] },
    ]);
    expect(found.map((each) => each.kind === 'accepted' && each.draft)).toEqual(
      [scenarioOf('make -B1'), ...others].map((scenario) => ({ ...draft, scenario, others: [] })),
    );
  });

  it('counts what it tells: an idea told apart once, twice where lamps or inputs do, and each wrong answer twice', () => {
    const found = (lamps: string[], inputs: string[], relays: string[], wrongAnswers: number): number =>
      telling({
        tellsApart: [...new Set([...lamps, ...inputs, ...relays])],
        tellsApartBy: { lamps, inputs, relays },
        wrongAnswers,
      } as unknown as Accepted);
    expect(found([], [], ['a'], 0)).toBe(1);
    expect(found(['a'], [], [], 1)).toBe(5);
    expect(found(['a', 'b'], ['b', 'c'], ['d'], 3)).toBe(3 * 3 + 1 + 2 * 3);
  });

  it('knows a drawing that breaks a rule', () => {
    const draft = draftOf(PAIR, 'make -B1', ASKED);
    expect(keepsRules(draft)).toBeUndefined();
    const bare = draftOf(PAIR.replace('  -B1:13-14', ''), 'hold -K1', ASKED);
    const lamps = { ...bare, circuit: { ...bare.circuit, paths: bare.circuit.paths.slice(0, 2) } };
    expect(keepsRules(lamps)).toMatchObject({
      kind: 'refused',
      reason: 'rule',
      detail: 'load-not-connected',
    });
  });

  it('finds told apart just what predictions made one by one tell apart', () => {
    for (const family of [...families, free]) {
      for (let seed = 0; seed < 12; seed++) {
        const generated = generate({ seed: `one by one ${seed}`, family: family.id, size: 1 + (seed % 4) });
        if (!generated.ok) throw new Error(`${family.id} ${seed}`);
        const { draft, tellsApart, tellsApartBy, wrongAnswers } = generated.accepted;
        if (draft.ends !== 'steady') continue;
        const { circuit, scenario } = draft;
        const read = ({ machine, state }: { machine: Machine; state: State }) => {
          const { lamps, inputs, coils } = readState(machine, state);
          return {
            lamps: JSON.stringify(lamps),
            inputs: JSON.stringify(inputs),
            relays: JSON.stringify(draft.relays.map((id) => coils[id]!.operated)),
          };
        };
        const right = read(solve(circuit, scenario));
        const all = predictAll(circuit, scenario).map((prediction) => ({
          id: prediction.misconception.id,
          ...read(prediction),
        }));
        const apartBy = (...kinds: (keyof typeof right)[]): string[] =>
          all.filter((one) => kinds.some((kind) => one[kind] !== right[kind])).map(({ id }) => id);
        const message = `${family.id} ${seed}`;
        expect(tellsApart, message).toEqual(apartBy('lamps', 'inputs', 'relays'));
        expect(tellsApartBy, message).toEqual({
          lamps: apartBy('lamps'),
          inputs: apartBy('inputs'),
          relays: apartBy('relays'),
        });
        const answers = new Set(all.map(({ lamps, inputs }) => lamps + inputs));
        answers.delete(right.lamps + right.inputs);
        expect(wrongAnswers, message).toBe(answers.size);
      }
    }
  });
});
