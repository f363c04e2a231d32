import { describe, expect, it } from 'vitest';
import { writeActs, writeCircuit } from '../../src/circuit/index.ts';
import { families, fingerprint, free, type Generated, generate } from '../../src/generator/index.ts';

type Made = Extract<Generated, { ok: true }>;
const made = (family: string, seed: string, size = 3): Made => {
  const generated = generate({ seed, family, size });
  if (!generated.ok) throw new Error(`${family} ${seed}: ${JSON.stringify(generated.refused)}`);
  return generated;
};
const seeds = (count: number) => Array.from({ length: count }, (_, index) => `seed-${index}`);

describe('generate', () => {
  it('gives the same circuit and scenario for the same seed', () => {
    for (const { id } of [...families, free]) expect(made(id, 'twice')).toEqual(made(id, 'twice'));
  });

  it('gives other circuits for other seeds', () => {
    const prints = seeds(60).map((seed) => fingerprint(made('free', seed, 4).accepted.draft.circuit));
    expect(new Set(prints).size).toBeGreaterThan(57);
  });

  it('varies even the smallest families: designations, texts and circuits', () => {
    for (const { id, size } of families) {
      const drafts = seeds(40).map((seed) => made(id, seed, size.min).accepted.draft);
      expect(new Set(drafts.map(({ circuit }) => fingerprint(circuit))).size, id).toBeGreaterThan(5);
      expect(new Set(drafts.map(({ circuit }) => circuit.title)).size, id).toBeGreaterThan(4);
      expect(new Set(drafts.map(({ lamps }) => lamps.join())).size, id).toBeGreaterThan(4);
    }
  });

  it('brings a size into the range of the family', () => {
    expect(made('status-pair', 'a', 99).size).toBe(8);
    expect(made('jog', 'a', 0).size).toBe(1);
  });

  it('gives only what is wanted, and says how often it refused', () => {
    const wanted = generate({
      seed: 'a',
      family: 'relay-chain',
      size: 3,
      want: ({ tellsApart }) => tellsApart.includes('second-relay-as-drawn'),
    });
    expect(wanted.ok && wanted.accepted.tellsApart).toContain('second-relay-as-drawn');
    const never = generate({ seed: 'a', family: 'make-only', size: 2, want: () => false });
    expect(never.ok).toBe(false);
    expect(never.refused['not-wanted']).toBeGreaterThan(20);
  });

  it('lets through a small share of answers by one pattern and of scenes that stay as they were', () => {
    const all = families.flatMap(({ id, size }) =>
      seeds(25).map((seed) => made(id, seed, Math.min(2, size.max)).accepted),
    );
    const share = (is: (accepted: (typeof all)[number]) => boolean): number =>
      all.filter(is).length / all.length;
    const onePattern = share(({ after: { lamps, inputs } }) => {
      const on = [...lamps.map((lamp) => lamp !== 'dark'), ...inputs.map((input) => input !== '0')];
      return on.length > 1 && on.every((each) => each === on[0]);
    });
    const asAtRest = share(({ rest, after }) => JSON.stringify(rest) === JSON.stringify(after));
    for (const found of [onePattern, asAtRest]) {
      expect(found).toBeGreaterThan(0.003);
      expect(found).toBeLessThan(0.12);
    }
  });

  it('knows only families that there are', () => {
    expect(() => generate({ seed: 'a', family: 'no-such-family', size: 1 })).toThrow(RangeError);
  });

  /** Held fixed: a change here means that every seed printed on a paper or kept in a record now leads elsewhere. */
  it('gives these circuits, on every machine', () => {
    const prints = Object.fromEntries(
      [...families, free].map(({ id }) => {
        const { circuit, scenario } = made(id, 'fixed', 2).accepted.draft;
        return [id, `${fingerprint(circuit)} ${writeActs(scenario.acts)}`];
      }),
    );
    expect(prints).toMatchInlineSnapshot(`
      {
        "acknowledged-alarm": "b1cf7e4ef5d7f81415727d0ec3f907f2 break -B11; press -S11; release -S11; make -B12",
        "break-only": "a12748b21f6075f8d739570d30829bd5 hold -K6; make -B2",
        "duty-standby": "aa00343fb7d0c10c735a45409aaf14cf press -S103; release -S103; make -B101; open -F102; close -F102",
        "flashing": "a2c33c90d6c1b1c2088846859fdb9ced make -B2; make -B1; break -B1",
        "free": "8a9b731c3c9562e19cbc821a436dcd08 press -S1",
        "healthy-relay": "97345425e6c8e3e4ff4f8f850f88867f break -B2; open -F1; close -F1",
        "interlocked": "38c6762a6de3608acaacc694cbefade0 press -S6; press -S3; release -S6",
        "jog": "3c8f8bd268ed34440edb7569ab34b024 press -S3; release -S3",
        "lamp-test": "04d0fbe5f9cad8d7307edb3bbaee02b0 press -S12; make -B12; release -S12",
        "make-only": "83d5db4174cf9c880732139dc9b4f19c make -B11; make -B13; break -B13",
        "off-delay": "cdde4e43c444b3406cfbda34ad7c488e break -B3; wait 5 s",
        "on-delay": "44434745fe9e755b62f79cb48ef6dfb0 make -B91; wait 35 s; break -B91",
        "permissive": "26c8c427000f17be7c1b7033959b54e4 make -B602",
        "pump-out": "4394c4cbd213815d5f707de2c5567378 make -B502; make -B501; break -B501",
        "relay-chain": "4ebd76a34dad066aedc9f3a4c43e4bdd make -B1",
        "seal-in": "835746e1f9eee958126de8d05b3a158d press -S103",
        "star-delta": "a7d5296f49ab280739367468eb925d5f press -S704; release -S704",
        "status-pair": "ea95126d850edba2d80d58d51ecb30d5 make -B2; break -B2; make -B2",
        "two-hand": "73a2467e594fe16b034c4eff8c87ac2c press -S82; wait 1 s; press -S81; release -S82; release -S81; press -S82; press -S81",
        "two-out-of-three": "9c9f5861d1cfb1b9a13abc69a7f32f6f make -B11; make -B13",
        "two-supplies": "34fc98e29f04faf0d08a74aa72e7384f make -B12; open -F11",
      }
    `);
  });

  it('gives this circuit, text for text', () => {
    expect(writeCircuit(made('two-supplies', 'fixed', 1).accepted.draft.circuit)).toMatchInlineSnapshot(`
      "# Flour line: elevator belt 2, lamps and controller inputs
      supply A 24 V AC earthed "Control supply"
      supply B 24 V DC "Controller signals"
      -F1  breaker 1 A "Control supply"
      -F2  breaker 1 A "Controller signals"
      -B1  limit-switch make "Elevator belt 2 off track"
      -K1  relay 4 poles
      -H1  lamp green "Elevator belt 2 on track"
      -H2  lamp red "Elevator belt 2 off track"
      -A1  inputs 1 24V-3 "Controller inputs" "Elevator belt 2 on track"

      A:L  -F1:1-2  -B1:13-14  -K1:A1-A2  A:N
      -F1:2  -K1:21-22  -H1:X1-X2  A:N
      -K1:21-24  -H2:X1-X2  A:N
      B:L+  -F2:1-2  -K1:31-32  -A1:I1-COM  B:L-
      "
    `);
  });
});
