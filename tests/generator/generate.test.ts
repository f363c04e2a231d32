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
        "acknowledged-alarm": "487aa6156e254d2c81baa479c11d89c1 make -B7; press -S7; release -S7; break -B8",
        "break-only": "c27ef89b0c0e3ae81195192916b0355c make -B2; make -B6",
        "duty-standby": "31e9b457381d9ef14f1add2a88f2fb85 press -S104; release -S104; make -B101",
        "flashing": "29c7bb4a218aac2ae7de55eea8e319b8 make -B7",
        "free": "e2d430d945ce847220c53bcd5563ba4a break -B1",
        "healthy-relay": "b605ea87c586ae319c84d9cef19dc51f break -B2",
        "interlocked": "d40c2e0843296f38447c0f00ef19a12b press -S33",
        "jog": "cc79403aa1b4ba3580dbf28132ac213e press -S2; release -S2",
        "lamp-test": "107cce6b1cb6aa5cedfad25b29fb935f make -B10; make -B8; press -S4; release -S4",
        "make-only": "9d810e25b4df6146e8308029e54dd143 make -B11; make -B13; break -B13",
        "off-delay": "77da9a5d031fef78726c056743a045b3 make -B1; break -B1; wait 9 s; make -B1; break -B1; wait 9 s",
        "on-delay": "13bb19d281a1c30d1cec55fa75655131 make -B91; wait 35 s; break -B91",
        "permissive": "1f8506d06075786611ce3a848016629b make -B1; break -B2; make -B2",
        "pump-out": "9fca5225442026637d2be6a1e6590ac5 make -B1; make -B2; break -B2",
        "relay-chain": "2dcdcd3e4099d975135320cd829207e9 make -B1",
        "seal-in": "1d8b4fb46ef9f2ed6c5ddcb135322553 press -S4; release -S4",
        "star-delta": "bea2e14fc67b3a3c76af41bfa6916cce press -S704; release -S704",
        "status-pair": "78fbd0d9bd536b409e462910442c90d8 make -B2; break -B2; make -B2",
        "two-hand": "07ee67e3182fc1ec172f87433b591713 press -S92; wait 0.2 s; press -S91; wait 2 s",
        "two-out-of-three": "919726bb4e299746b02c0b859105b0ca make -B12; make -B11",
        "two-supplies": "9e473515c7cc87368f3e6a9801cf3e27 hold -K101; make -B103; free -K101",
      }
    `);
  });

  it('gives this circuit, text for text', () => {
    expect(writeCircuit(made('two-supplies', 'fixed', 1).accepted.draft.circuit)).toMatchInlineSnapshot(`
      "# Ferry ramp: winch brake 5, lamps and controller inputs
      supply A 24 V AC earthed "Control supply, transformer"
      supply B 24 V DC "Controller signals, power supply unit"
      -F104  fuse 6 A "Control supply"
      -F102  fuse 2 A "Controller signals"
      -A102  inputs 3 24V-3 "Controller inputs" "Winch brake 5 on"
      -B102  limit-switch make "Winch brake 5 lifted"
      -K101  relay 3 poles
      -H102  lamp white "Winch brake 5 on"

      B:L+  -F102:1-2  -K101:31-32  -A102:I1-COM  B:L-
      A:L  -F104:1-2  -K101:21-22  -H102:X1-X2  A:N
      -F104:2  -B102:13-14  -K101:A1-A2  A:N
      "
    `);
  });
});
