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
        "acknowledged-alarm": "d0bd95881a00e1694e9b64ce16b0f0c7 make -B7; press -S7; release -S7; break -B8",
        "break-only": "2ca36ae7fd1a254a6248712d2ba0f1ba hold -K6; make -B2",
        "duty-standby": "31e9b457381d9ef14f1add2a88f2fb85 press -S104; release -S104; make -B101",
        "flashing": "e5a5b04fbd9a949ce52c436ce9d696cd make -B7",
        "free": "29a698b15e8fec1869f7299d5ed6a1fb press -S3",
        "healthy-relay": "a81a1c89229ac03b64106f18eaf36503 break -B2",
        "interlocked": "4bac25edb264be60d1a573a8ca6f8500 press -S6; press -S3; release -S6",
        "jog": "35208c3b57c08442ea400433c2373c0b press -S2; release -S2",
        "lamp-test": "2ee37b275013fb404f0192067f25bcd9 make -B10; make -B8; press -S4; release -S4",
        "make-only": "f6b90f0a13062e97c8515c292dd6cf34 make -B11; make -B13; break -B13",
        "off-delay": "40d2d480e78dc5e94fc5b4477111e7ff break -B3; wait 5 s",
        "on-delay": "87fe5a40055749eb7be575538f43bd94 make -B91; wait 35 s; break -B91",
        "permissive": "863a56311d2a58cb5cdad94e5b3d8abf make -B1; break -B2; make -B2",
        "pump-out": "9fca5225442026637d2be6a1e6590ac5 make -B1; make -B2; break -B2",
        "relay-chain": "4e07a7e83312240e7900e8f6a4f7081d make -B1",
        "seal-in": "c3069b7f2417eff3d50079d6b09dfb5b press -S7; release -S7",
        "star-delta": "24e2aa29d7f83f0817a0d422608c1cf6 press -S704; release -S704",
        "status-pair": "8986cc313d223004349e69f8a089201e make -B2; break -B2; make -B2",
        "two-hand": "ebe98263c3f129c35ac29b050b7d78b6 press -S92; wait 0.2 s; press -S91; wait 2 s",
        "two-out-of-three": "5763b74c37ecfd7422e88488635ffa85 make -B12; make -B11",
        "two-supplies": "d62e41d1ade3da51d4898fc2da13d844 hold -K12",
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
      -A1  inputs 3 24V-3 "Controller inputs" "Elevator belt 2 on track"
      -B1  limit-switch make "Elevator belt 2 off track"
      -K1  relay 4 poles
      -H1  lamp green "Elevator belt 2 on track"
      -H2  lamp red "Elevator belt 2 off track"

      A:L  -F1:1-2  -B1:13-14  -K1:A1-A2  A:N
      -F1:2  -K1:21-22  -H1:X1-X2  A:N
      -K1:21-24  -H2:X1-X2  A:N
      B:L+  -F2:1-2  -K1:11-12  -A1:I1-COM  B:L-
      "
    `);
  });
});
