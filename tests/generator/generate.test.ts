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
        "acknowledged-alarm": "9fc7b21d3c411aaf62f8ba33b1814baa break -B11; press -S11; release -S11; make -B12",
        "break-only": "ed931332f6addebf2003e041d3ef97f7 hold -K6; make -B2",
        "duty-standby": "badc59a3858258f29595603c55ea2afe press -S104; release -S104; make -B101",
        "flashing": "4f0c71dc71ff2949b361cdb4f2122b57 make -B2; make -B1; break -B1",
        "free": "6ab0b5fa2a253745232072057cde8f7c press -S1",
        "healthy-relay": "da76fe386c66b24717a1599fad95c058 break -B2; open -F1; close -F1",
        "interlocked": "f7224e3b20b53b1a4a6cc032adf6102a press -S6; press -S3; release -S6",
        "jog": "e84c6378d5a804f0cc75cb02be78a8ab press -S12; press -S13",
        "lamp-test": "2c71daf6e7525b6da1cc39a54b2660f9 press -S12; make -B12; release -S12",
        "make-only": "6b8ad02b4e84508dfa8fc88f0826abb1 make -B11; make -B13; break -B13",
        "off-delay": "ca8ad90ff0f65e3f63da579add15107a break -B3; wait 5 s",
        "on-delay": "c3cf6d5c642d6a6af90a8dd167ab53a8 make -B91; wait 35 s; break -B91",
        "permissive": "d9deace3e6defdff1bf2c2fdbfaae68d make -B2",
        "pump-out": "3582382c54e6aaa5eaf8591b591ec12f make -B1; make -B2; break -B2",
        "relay-chain": "d7b5db742f7fd4b114d0ba4be59b764c make -B1",
        "seal-in": "b05d4bdadff6ff9b5f2f73ff9ecc669f press -S7; release -S7",
        "star-delta": "be8d80a8c0beef29873243a366f74c43 press -S704; release -S704",
        "status-pair": "7ea62a16f6d7fe28956c79b20d19f549 make -B2; break -B2; make -B2",
        "two-hand": "f646e48f4fa0069a9be4282713dccc80 press -S92; wait 0.2 s; press -S91; wait 2 s",
        "two-out-of-three": "5290a5fa81ffb2a5b194ac5e6feef9f5 make -B12; make -B11",
        "two-supplies": "d7839fe12fe79805410201fca892abe9 make -B12; open -F11",
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
