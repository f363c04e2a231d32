import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkRules, problemOf } from '../../src/circuit/index.ts';
import { families, generate } from '../../src/generator/index.ts';
import { rulesOfPractice, shortCircuit } from '../../src/solver/index.ts';
import { english, told } from '../support/in-english.ts';
import { circuitOf } from '../support/written.ts';

function findings(text: string): string[] {
  const circuit = circuitOf(text);
  return told(checkRules(circuit, [shortCircuit]).map((finding) => problemOf(finding, circuit))).map(
    ({ message }) => message,
  );
}

const HEAD = 'supply A 24 V DC\n-F1 fuse 2 A\n';

describe('the rule against short circuits', () => {
  it('finds one that is there from the start', () => {
    expect(findings(`${HEAD}A:L+ -F1:1-2 A:L-`)).toEqual([
      'There is a short circuit as soon as the supply is on.',
    ]);
  });

  it('names the acts that lead to it, the fewest', () => {
    const text = `${HEAD}-S1 push-button make "Test"\n-S2 push-button make\n-H1 lamp\nA:L+ -F1:1-2 -S1:13-14 -S2:13-14 A:L-\n-F1:2 -H1:X1-X2 A:L-`;
    const [found] = findings(text);
    expect(found).toContain('-S1');
    expect(found).toContain('-S2');
    expect(found!.match(/press/g)).toHaveLength(2);
  });

  it('finds one that two relays make together, and none when they are interlocked', () => {
    const two = (first: string, second: string) =>
      `${HEAD}-S1 push-button make\n-S2 push-button make\n-K1 relay 2 poles\n-K2 relay 2 poles\n` +
      `A:L+ -F1:1-2 -S1:13-14 ${first} -K1:A1-A2 A:L-\n-F1:2 -S2:13-14 ${second} -K2:A1-A2 A:L-\n-F1:2 -K1:21-24 -K2:21-24 A:L-`;
    expect(findings(two('', ''))).toHaveLength(1);
    expect(findings(two('-K2:11-12', '-K1:11-12'))).toEqual([]);
  });

  it('finds one that only a timer brings about', () => {
    const text = `${HEAD}-K5 on-delay 5 s 1 pole\nA:L+ -F1:1-2 -K5:A1-A2 A:L-\n-F1:2 -K5:15-18 A:L-`;
    expect(findings(text)[0]).toContain('wait');
  });

  it('finds none across a changeover whose legs go to the two poles: it breaks before it makes', () => {
    const text = `${HEAD}-S1 push-button make\n-K1 relay\n-H1 lamp\nA:L+ -F1:1-2 -S1:13-14 -K1:A1-A2 A:L-\n-F1:2 -K1:14\n-K1:12 A:L-\n-K1:11 -H1:X1-X2 A:L-`;
    expect(findings(text)).toEqual([]);
  });

  it('stands in docs/errors.md with its reason and source, as the rules of practice do', () => {
    const page = readFileSync(new URL('../../docs/errors.md', import.meta.url), 'utf8');
    for (const rule of [shortCircuit, ...rulesOfPractice]) {
      const name = rule.name as keyof typeof english.ruleReasons;
      const meaning = `${english.ruleReasons[name]} Source: ${english.ruleSources[name]}.`;
      expect(page).toContain(`| \`${name}\` | solved drawing rule | ${meaning} |`);
    }
  });

  it('finds none in the circuits of any family', () => {
    for (const { id, size } of families) {
      for (let seed = 0; seed < 3; seed++) {
        const made = generate({ seed: `short-${seed}`, family: id, size: size.min });
        if (made.ok) expect(checkRules(made.accepted.draft.circuit, [shortCircuit])).toEqual([]);
      }
    }
  });
});
