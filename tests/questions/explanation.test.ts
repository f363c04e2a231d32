/** What explanations say on circuits small enough to check by eye. */
import { describe, expect, it } from 'vitest';
import type { Circuit } from '../../shared/circuit.ts';
import type { Question } from '../../shared/question.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { blankAnswer, checkQuestion, rightAnswer } from '../../src/questions/index.ts';
import { askQuestion, hintFor, markAnswer } from '../support/in-english.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

const explanationOf = (question: Question) => {
  expect(checkQuestion(question)).toEqual([]);
  return markAnswer(question, blankAnswer(question)).explanation;
};

/** What decides, each with what stands behind it. */
const explained = (question: Question): string[] =>
  explanationOf(question).decides.flatMap(({ text, behind }) => [text, ...behind.map((step) => step.text)]);

/** All that happens. */
const story = (question: Question): string[] => explanationOf(question).story.map(({ text }) => text);

const lamps = (circuit: Circuit, scenario: Scenario, ...asked: string[]): Question => ({
  kind: 'lamp-states',
  circuit,
  scenario,
  family: 'fixed',
  asked,
});

const PUMP = circuitOf(`
supply A 24 V DC
-F1 breaker
-B1 field-contact make "Bin 2 full"
-K3 relay
-H1 lamp "Bin 2 not full"
-H2 lamp "Bin 2 full"
A:L+ -F1:1-2 -B1:13-14 -K3:A1-A2 A:L-
-F1:2 -K3:11-12 -H1:X1-X2 A:L-
-K3:11-14 -H2:X1-X2 A:L-`);

const SEALED = circuitOf(`
supply A 24 V AC
-F1 fuse
-S0 push-button break 21-22 "Stop"
-S1 push-button make 13-14 "Start"
-K1 relay 2 poles
-H1 lamp
A:L -F1:1-2 -S0:21-22 -S1:13-14 -K1:A1-A2 A:N
-S0:22 -K1:11-14 -S1:14
-F1:2 -K1:21-24 -H1:X1-X2 A:N`);

describe('an explanation', () => {
  it('tells of each lamp what decides, then why the relay stands as it stands', () => {
    const question = lamps(PUMP, scenarioOf('make -B1'), '-H1', '-H2');
    expect(explained(question)).toEqual([
      '-H1 is dark: -K3:11-12 is open because -K3 has operated.',
      '-K3 has operated: its coil is fed from A:L+ through -F1:1-2 and -B1:13-14 (closed: -B1 is actuated), and back to A:L-.',
      '-H2 is lit: it is fed from A:L+ through -F1:1-2 and -K3:11-14 (closed: -K3 has operated), and back to A:L-.',
    ]);
    expect(story(question)).toEqual([
      '1. -B1 ("Bin 2 full") is actuated: -B1:13-14 makes.',
      '-K3 operates: its coil is fed from A:L+ through -F1:1-2 and -B1:13-14, and back to A:L-. It breaks -K3:11-12 and makes -K3:11-14.',
    ]);
  });

  it('goes back to the cause where a relay has not operated, and tells it once', () => {
    const question = lamps(PUMP, scenarioOf(), '-H1', '-H2');
    expect(explained(question)).toEqual([
      '-H1 is lit: it is fed from A:L+ through -F1:1-2 and -K3:11-12 (closed: -K3 has not operated), and back to A:L-.',
      '-K3 is at rest: -B1:13-14 is open because -B1 is not actuated.',
      '-H2 is dark: -K3:11-14 is open because -K3 has not operated.',
    ]);
    expect(story(question)).toEqual([]);
  });

  it('is short where the answer was right, and whole where it was wrong or left out', () => {
    const question = lamps(PUMP, scenarioOf('make -B1'), '-H1', '-H2');
    const told = (states: Record<string, string>): string[] =>
      markAnswer(question, { kind: 'lamp-states', states }).explanation.decides.flatMap(
        ({ text, behind }) => [text, ...behind.map((step) => step.text)],
      );
    expect(told({ '-H1': 'dark', '-H2': 'lit' })).toEqual([
      '-H1 is dark: -K3:11-12 is open.',
      '-H2 is lit, fed through -K3:11-14.',
    ]);
    expect(told({ '-H1': 'dark', '-H2': 'dark' })).toEqual([
      '-H1 is dark: -K3:11-12 is open.',
      '-H2 is lit: it is fed from A:L+ through -F1:1-2 and -K3:11-14 (closed: -K3 has operated), and back to A:L-.',
      '-K3 has operated: its coil is fed from A:L+ through -F1:1-2 and -B1:13-14 (closed: -B1 is actuated), and back to A:L-.',
    ]);
  });

  it('tells by what a seal-in holds, and how it began', () => {
    const question: Question = {
      kind: 'relay-states',
      circuit: SEALED,
      scenario: scenarioOf('press -S1; release -S1'),
      family: 'fixed',
      asked: ['-K1'],
    };
    expect(explained(question)).toEqual([
      '-K1 has operated: its coil is fed from A:L through -F1:1-2, -S0:21-22 (closed: -S0 is not pressed) and -K1:11-14 (its own contact), and back to A:N.',
    ]);
    expect(story(question)).toEqual([
      '1. Press -S1 ("Start"): -S1:13-14 makes.',
      '-K1 operates: its coil is fed from A:L through -F1:1-2, -S0:21-22 and -S1:13-14, and back to A:N. It makes -K1:11-14 and -K1:21-24.',
      '2. Release -S1 ("Start"): -S1:13-14 breaks.',
    ]);
  });

  it('tells that a relay stays off when its supply comes back, and what keeps it off then', () => {
    const question = lamps(SEALED, scenarioOf('press -S1; release -S1; fail A; restore A'), '-H1');
    expect(explained(question)).toEqual([
      '-H1 is dark: -K1:21-24 is open because -K1 has not operated.',
      '-K1 is at rest: -S1:13-14 is open because -S1 is not pressed, and -K1:11-14 is open because -K1 has not operated.',
    ]);
    expect(story(question)).toEqual([
      '1. Press -S1 ("Start"): -S1:13-14 makes.',
      '-K1 operates: its coil is fed from A:L through -F1:1-2, -S0:21-22 and -S1:13-14, and back to A:N. It makes -K1:11-14 and -K1:21-24.',
      '2. Release -S1 ("Start"): -S1:13-14 breaks.',
      '3. Let supply A (24 V AC) fail.',
      '-K1 releases: supply A is off. It breaks -K1:11-14 and -K1:21-24.',
      '4. Restore supply A (24 V AC): nothing moves.',
    ]);
  });

  it('tells what holds in the end, not what held when a relay last moved: the other direction keeps it off', () => {
    const both = circuitOf(`
supply A 24 V DC
-S1 push-button make "Up"
-S2 push-button make "Down"
-K1 relay 2 poles
-K2 relay 2 poles
-H1 lamp
A:L+ -S1:13-14 -K2:11-12 -K1:A1-A2 A:L-
A:L+ -S2:13-14 -K1:11-12 -K2:A1-A2 A:L-
A:L+ -K2:21-24 -H1:X1-X2 A:L-`);
    expect(explained(lamps(both, scenarioOf('press -S1; press -S2'), '-H1'))).toEqual([
      '-H1 is dark: -K2:21-24 is open because -K2 has not operated.',
      '-K2 is at rest: -K1:11-12 is open because -K1 has operated.',
      '-K1 has operated: its coil is fed from A:L+ through -S1:13-14 (closed: -S1 is pressed) and -K2:11-12 (closed: -K2 has not operated), and back to A:L-.',
    ]);
  });

  it('tells of contacts together that are open for one reason', () => {
    const twice = circuitOf(`
supply A 24 V DC
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
A:L+ -B1:13-14 -K1:A1-A2 A:L-
A:L+ -K1:11-14 -H1:X1-X2 A:L-
A:L+ -K1:21-24 -H1:X1`);
    expect(explained(lamps(twice, scenarioOf(), '-H1'))[0]).toBe(
      '-H1 is dark: -K1:11-14 and -K1:21-24 are open because -K1 has not operated.',
    );
  });

  it('leaves out relays that nothing asked hangs on', () => {
    const two = circuitOf(`
supply A 24 V DC
-B1 field-contact make
-B2 field-contact make
-K1 relay
-K2 relay
-H1 lamp
A:L+ -B1:13-14 -K1:A1-A2 A:L-
A:L+ -B2:13-14 -K2:A1-A2 A:L-
A:L+ -K1:11-14 -H1:X1-X2 A:L-`);
    const question = lamps(two, scenarioOf('make -B1; make -B2'), '-H1');
    const text = [...explained(question), ...story(question)].join(' ');
    expect(text).toContain('-K1 operates');
    expect(text).not.toContain('-K2');
  });

  it.each([
    ['-K3:A1-A2 open', '-K3 is at rest: its coil is open inside, so it does nothing even with its voltage.'],
    ['-K3 stuck', '-K3 is at rest: it is stuck at rest.'],
    ['-K3:A2 broken', '-K3 is at rest: the conductor at -K3:A2 is off.'],
    ['-B1:14 -K3:A1 broken', '-K3 is at rest: the wire between -B1:14 and -K3:A1 is broken.'],
    [
      '-B1:13-14 dirty 2000 ohm',
      '-K3 is at rest: its coil has only 5.37 V of 24 V, from A:L+ through -F1:1-2 and -B1:13-14 (closed: -B1 is actuated), and back to A:L-.',
    ],
  ])('names the fault that keeps a relay from operating: %s', (fault, sentence) => {
    expect(explained(lamps(PUMP, scenarioOf('make -B1', fault), '-H2'))).toContain(sentence);
  });

  it('tells a lamp that is open inside, one without its return, one behind a tripped breaker', () => {
    const told = (fault: string): string =>
      explained(lamps(PUMP, scenarioOf('make -B1', fault), '-H2')).at(-1)!;
    expect(told('-H2:X1-X2 open')).toBe('-H2 is dark: it is open inside.');
    expect(told('-H2:X2 broken')).toBe('-H2 is dark: the conductor at -H2:X2 is off.');
    expect(explained(lamps(PUMP, scenarioOf('open -F1'), '-H1')).at(-1)).toBe(
      '-H1 is dark: -F1:1-2 is open.',
    );
  });

  it('tells of a welded contact that it stays closed', () => {
    expect(explained(lamps(PUMP, scenarioOf('make -B1', '-K3:11-12 welded'), '-H1'))).toEqual([
      '-H1 is lit: it is fed from A:L+ through -F1:1-2 and -K3:11-12 (welded, so it stays closed), and back to A:L-.',
      '-K3 has operated: its coil is fed from A:L+ through -F1:1-2 and -B1:13-14 (closed: -B1 is actuated), and back to A:L-.',
    ]);
  });

  it('tells what opened on a short circuit', () => {
    const question = lamps(PUMP, scenarioOf('make -B1', '-K3:A1-A2 shorted'), '-H1');
    expect(explained(question)).toEqual(['-H1 is dark: -F1:1-2 is open.']);
    expect(story(question)).toEqual([
      '1. -B1 ("Bin 2 full") is actuated: -B1:13-14 makes.',
      '-F1 opens by itself: two poles of its supply are joined without a load.',
    ]);
  });

  it('tells what stops a motor, and what feeds it', () => {
    const motor = circuitOf(`
supply P 400 V 3AC
supply A 230 V AC
-F1 fuse 3 poles
-S1 push-button make
-Q1 contactor 230 V AC
-M1 motor 230 V
P:L1 -F1:1-2 -Q1:1-2 -M1:U1
P:L2 -F1:3-4 -Q1:3-4 -M1:V1
P:L3 -F1:5-6 -Q1:5-6 -M1:W1
A:L -S1:13-14 -Q1:A1-A2 A:N`);
    expect(explained(lamps(motor, scenarioOf(), '-M1'))).toEqual([
      '-M1 is off: -Q1:1-2 is open because -Q1 has not operated.',
      '-Q1 is at rest: -S1:13-14 is open because -S1 is not pressed.',
    ]);
    expect(explained(lamps(motor, scenarioOf('press -S1'), '-M1'))[0]).toBe(
      '-M1 is on: it is fed from P:L1 through -F1:1-2 and -Q1:1-2 (closed: -Q1 has operated), and back through -Q1:4-3 (closed: -Q1 has operated) and -F1:4-3 to P:L2.',
    );
    // The other two windings go on having current, by way of each other.
    for (const terminal of ['U1', 'V1', 'W1'])
      expect(explained(lamps(motor, scenarioOf('press -S1', `-M1:${terminal} broken`), '-M1'))[0]).toBe(
        `-M1 is off: the conductor at -M1:${terminal} is off.`,
      );
  });

  it('tells the voltage of a lamp that is dim, and the way through the other load', () => {
    const series = circuitOf(`
supply A 24 V DC
-H1 lamp
-H2 lamp
A:L+ -H1:X1-X2 -H2:X1-X2 A:L-`);
    const question = lamps(series, scenarioOf(), '-H1');
    expect(rightAnswer(question)).toEqual({ kind: 'lamp-states', states: { '-H1': 'dim' } });
    expect(explained(question)).toEqual([
      '-H1 is dim with only 12 V of 24 V: it is fed straight from A:L+, and back through -H2:X1-X2 to A:L-.',
    ]);
  });

  it('tells timers: still timing, timed out, and running on after their signal', () => {
    const timed = (kind: string): Circuit =>
      circuitOf(`
supply A 24 V AC
-S1 selector Off/On make On 13-14
-K1 ${kind} 5 s
-H1 lamp
A:L -S1:13-14 -K1:A1-A2 A:N
A:L -K1:15-18 -H1:X1-X2 A:N`);
    const told = (kind: string, acts: string): string[] =>
      explained(lamps(timed(kind), scenarioOf(acts), '-H1'));
    expect(told('on-delay', 'turn -S1 On; wait 2 s')).toContain(
      '-K1 is at rest: its coil is fed from A:L through -S1:13-14 (closed: -S1 stands at On), and back to A:N, but only 2 s of its 5 s are over.',
    );
    expect(told('on-delay', 'turn -S1 On')).toContain(
      '-K1 is at rest: its coil is fed from A:L through -S1:13-14 (closed: -S1 stands at On), and back to A:N, but its 5 s are only beginning.',
    );
    expect(told('on-delay', 'turn -S1 On; wait 6 s')).toContain(
      '-K1 has operated: its coil is fed from A:L through -S1:13-14 (closed: -S1 stands at On), and back to A:N, and its 5 s are over.',
    );
    expect(
      story(lamps(timed('off-delay'), scenarioOf('turn -S1 On; turn -S1 Off; wait 6 s'), '-H1')),
    ).toContain(
      '-K1 releases: its coil is off (-S1:13-14 is open because -S1 stands at Off), and its 5 s are over. It breaks -K1:15-18.',
    );
    const running: Question = {
      kind: 'relay-states',
      circuit: timed('off-delay'),
      scenario: scenarioOf('turn -S1 On; turn -S1 Off; wait 2 s'),
      family: 'fixed',
      asked: ['-K1'],
    };
    expect(explained(running).at(-1)).toBe(
      '-K1 has operated: its coil is off (-S1:13-14 is open because -S1 stands at Off), but only 2 s of its 5 s are over.',
    );
  });

  it('tells a timer with a supply of its own by its signal, and by its supply where that is gone', () => {
    const on = circuitOf(`
# Ice works: crusher fan runs on
supply A 24 V AC
-F1 breaker
-B1 field-contact make
-K1 supplied-off-delay 5 s
-H1 lamp
A:L -F1:1-2 -K1:A1-A2 A:N
A:L -B1:13-14 -K1:B1-A2
A:L -K1:15-18 -H1:X1-X2 A:N`);
    const told = (acts: string): string =>
      explained({
        kind: 'relay-states',
        circuit: on,
        scenario: scenarioOf(acts),
        family: 'fixed',
        asked: ['-K1'],
      }).at(-1)!;
    expect(told('make -B1')).toMatch(
      /^-K1 has operated: its control input has its signal, from A:L through -B1:13-14/,
    );
    expect(told('make -B1; break -B1; wait 2 s')).toBe(
      '-K1 has operated: the signal at its control input is gone (-B1:13-14 is open because -B1 is not actuated), but only 2 s of its 5 s are over.',
    );
    expect(told('make -B1; break -B1; wait 6 s')).toBe(
      '-K1 is at rest: the signal at its control input is gone (-B1:13-14 is open because -B1 is not actuated), and its 5 s are over.',
    );
    expect(told('make -B1; open -F1')).toMatch(
      /^-K1 is at rest: it has no supply at A1-A2 \(-F1:1-2 is open[^)]*\), so it releases at once\./,
    );
  });

  it('tells a latching relay by its last pulse, and what flashes by its flasher', () => {
    const latching = circuitOf(`
supply A 24 V DC
-S1 push-button make
-S2 push-button make
-K7 latching-relay
-H1 lamp
A:L+ -S1:13-14 -K7:A1-A2 A:L-
A:L+ -S2:13-14 -K7:B1-B2 A:L-
A:L+ -K7:11-14 -H1:X1-X2 A:L-`);
    const relay: Question = {
      kind: 'relay-states',
      circuit: latching,
      scenario: scenarioOf('press -S1; release -S1'),
      family: 'fixed',
      asked: ['-K7'],
    };
    expect(explained(relay).at(-1)).toBe(
      '-K7 has operated: it is a latching relay and stays where its last pulse put it.',
    );
    expect(story(lamps(latching, scenarioOf('press -S1; release -S1; press -S2'), '-H1'))).toContain(
      '-K7 releases: its reset coil is fed from A:L+ through -S2:13-14, and back to A:L-. It breaks -K7:11-14.',
    );
    const stands = (acts: string): string | undefined =>
      explained({ ...relay, scenario: scenarioOf(acts) } as Question).at(-1);
    expect(stands('')).toBe(
      '-K7 is at rest: nothing sets it now (-S1:13-14 is open because -S1 is not pressed).',
    );
    expect(stands('press -S2')).toBe(
      '-K7 is at rest: its reset coil is fed from A:L+ through -S2:13-14 (closed: -S2 is pressed), and back to A:L-.',
    );
    expect(stands('press -S2; press -S1')).toBe(
      '-K7 is at rest: its reset coil is fed as well, from A:L+ through -S2:13-14 (closed: -S2 is pressed), and back to A:L-.',
    );
    const flashing = circuitOf(`
supply A 24 V DC
-B1 field-contact make
-K5 flasher 0.5 s on 1 s off
-H1 lamp
A:L+ -B1:13-14 -K5:A1-A2 A:L-
A:L+ -K5:15-18 -H1:X1-X2 A:L-`);
    const question = lamps(flashing, scenarioOf('make -B1'), '-H1');
    expect(rightAnswer(question)).toEqual({ kind: 'lamp-states', states: { '-H1': 'flashing' } });
    expect(explained(question)).toEqual([
      '-H1 never rests: it is fed from A:L+ through -K5:15-18 (closed: -K5 has operated), and back to A:L-; in between -K5:15-18 is open because -K5 has not operated (500 ms on, 1 s off).',
      '-K5 never rests: its coil is fed from A:L+ through -B1:13-14 (closed: -B1 is actuated), and back to A:L-.',
    ]);
  });

  it('tells a relay that its own contact would hold by what keeps it out even with that closed', () => {
    const broken = (acts: string): string[] =>
      explained(lamps(SEALED, scenarioOf(acts, '-K1:11 broken'), '-H1'));
    expect(broken('press -S1; release -S1').at(-1)).toBe(
      '-K1 is at rest: -S1:13-14 is open because -S1 is not pressed, and the conductor at -K1:11 is off.',
    );
    // With the conductor on it never was in, and that is all there is to say.
    expect(explained(lamps(SEALED, scenarioOf(), '-H1')).at(-1)).toContain(
      '-K1:11-14 is open because -K1 has not operated',
    );
  });

  it('leads to a relay that is held in by its contacts, not by its coil', () => {
    const held = lamps(PUMP, scenarioOf('hold -K3'), '-H1', '-H2');
    expect(hintFor(held)).toBe(
      'Begin with -K3: it is held in by hand after 1 (hold -K3 in by hand), whatever its coil has. Look at what its contacts do.',
    );
  });

  it('says that the supply has just come on where a timer may be running since', () => {
    const { situation } = askQuestion(
      lamps(
        circuitOf(`
supply A 24 V AC
-B1 field-contact break
-K1 on-delay 5 s
-H1 lamp
A:L -B1:11-12 -K1:A1-A2 A:N
A:L -K1:15-18 -H1:X1-X2 A:N`),
        scenarioOf(),
        '-H1',
      ),
    );
    expect(situation).toContain('The supply has just been switched on.');
    expect(askQuestion(lamps(PUMP, scenarioOf(), '-H1')).situation).toContain(
      'The supply is on, and -F1 is closed.',
    );
  });

  it('tells what is open besides at a star point, although closing it with delta would short the supply', () => {
    const motor = circuitOf(`
supply A 24 V AC
supply B 400 V 3AC earthed
-S1 push-button make
-S2 push-button make
-K2 contactor 3 main
-K3 contactor 3 main
-F2 breaker 3 poles
-M1 motor 400 V 6 terminals
B:L1 -F2:1-2 -M1:U1-U2 -K2:1-2
B:L2 -F2:3-4 -M1:V1-V2 -K2:3-4 -K2:2
B:L3 -F2:5-6 -M1:W1-W2 -K2:5-6 -K2:4
-F2:2 -K3:1-2 -M1:W2
-F2:4 -K3:3-4 -M1:U2
-F2:6 -K3:5-6 -M1:V2
A:L -S1:13-14 -K3:A1-A2 A:N
A:L -S2:13-14 -K2:A1-A2 A:N`);
    const asked: Question = {
      kind: 'still-live',
      circuit: motor,
      scenario: scenarioOf('press -S1; open -F2'),
      family: 'fixed',
      asked: ['-K2:2', '-K3:A1'],
    };
    expect(explained(asked)[0]).toBe(
      '-K2:2 is dead: -F2:1-2, -F2:3-4 and -F2:5-6 are open; -K2:1-2, -K2:3-4 and -K2:5-6 are open too.',
    );
  });

  it('tells what is open besides where closing what stops a load wouldn’t feed it', () => {
    const stopped = lamps(SEALED, scenarioOf('press -S0'), '-H1');
    expect(explained(stopped)).toEqual([
      '-H1 is dark: -K1:21-24 is open because -K1 has not operated.',
      '-K1 is at rest: -S0:21-22 is open because -S0 is pressed; -S1:13-14 and -K1:11-14 are open too.',
    ]);
    const failed = lamps(PUMP, scenarioOf('fail A'), '-H1', '-H2');
    expect(explained(failed)).toEqual([
      '-H1 is dark: supply A is off.',
      '-H2 is dark: -K3:11-14 is open because -K3 has not operated; supply A is off too.',
      '-K3 is at rest: -B1:13-14 is open because -B1 is not actuated; supply A is off too.',
    ]);
    // Ways beside one another: one contact of each stops it, and closing any of them would feed it.
    expect(explained(lamps(SEALED, scenarioOf(), '-H1')).at(-1)).toBe(
      '-K1 is at rest: -S1:13-14 is open because -S1 is not pressed, and -K1:11-14 is open because -K1 has not operated.',
    );
    // What makes it release is what has opened, whatever else is open.
    expect(story(lamps(SEALED, scenarioOf('press -S1; release -S1; press -S0'), '-H1')).at(-1)).toMatch(
      /^-K1 releases: -S0:21-22 is open because -S0 is pressed\. /,
    );
  });

  it('tells of a conductor that is off that it is, where that isn’t all', () => {
    const broken = lamps(PUMP, scenarioOf('', '-F1:1 broken; -H2:X2 broken'), '-H2');
    expect(explained(broken)[0]).toBe(
      '-H2 is dark: the conductor at -F1:1 is off; -K3:11-14 is open too and the conductor at -H2:X2 is off too.',
    );
    const whole = markAnswer(broken, { kind: 'lamp-states', states: { '-H2': 'dark' } });
    expect(whole.explanation.decides[0]!.text).toBe('-H2 is dark: the conductor at -F1:1 is off.');
  });

  it('points at what is acted on, and at the devices and terminals of each path', () => {
    const question = lamps(PUMP, scenarioOf('make -B1; wait 1 s'), '-H2');
    expect(explanationOf(question).story.map(({ about }) => about)).toEqual([
      ['-B1'],
      expect.arrayContaining(['-K3', '-B1:13', '-B1:14', '-K3:A1', '-K3:A2']),
      [],
    ]);
    expect(explanationOf(question).decides.map(({ about }) => about)).toEqual([
      expect.arrayContaining(['-H2', '-K3:11', '-K3:14', '-H2:X1', '-H2:X2']),
    ]);
  });

  it('of a start with everything open tells what is closed then, and of a fuse that blows at once that it did', () => {
    const dead = { ...scenarioOf('close -F1', '', 'dead') };
    expect(story(lamps(PUMP, dead, '-H1'))).toEqual(['1. Close -F1: -F1:1-2 closes.']);
    expect(story(lamps(PUMP, scenarioOf('', '-B1:13-14 welded; -K3:A1-A2 shorted'), '-H1'))[0]).toBe(
      '-F1 opens by itself: two poles of its supply are joined without a load.',
    );
  });

  it('hints at the relay that comes first', () => {
    expect(hintFor(lamps(PUMP, scenarioOf('make -B1'), '-H1'))).toMatch(/^Begin with -K3:/);
    const plain = circuitOf(`
supply A 24 V DC
-S1 push-button make
-H1 lamp
A:L+ -S1:13-14 -H1:X1-X2 A:L-`);
    expect(hintFor(lamps(plain, scenarioOf('press -S1'), '-H1'))).toMatch(/^Follow the path of -H1/);
  });
});

describe('the explanation of a meter reading', () => {
  const TWO = circuitOf(`
supply A 24 V DC
supply B 24 V DC
-F1 breaker
-F2 breaker
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
-H2 lamp
A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-
-F1:2 -K1:11-14 -H1:X1-X2 A:L-
B:L+ -F2:1-2 -K1:21-24 -H2:X1-X2 B:L-`);
  const measured = (acts: string, fault: string, ...points: [string, string]): Question => ({
    kind: 'meter',
    circuit: TWO,
    scenario: scenarioOf(acts, fault),
    family: 'fixed',
    points: points as Extract<Question, { kind: 'meter' }>['points'],
    tolerance: 1,
  });
  const read = (question: Question): [unknown, string[]] => {
    const right = rightAnswer(question);
    return [right.kind === 'meter' ? right.volts : undefined, explained(question)];
  };

  it('finds the whole voltage across an open contact and none across a closed one', () => {
    const [open, whyOpen] = read(measured('', '', '-K1:11', '-K1:14'));
    expect(open).toBe(24);
    expect(whyOpen).toEqual([
      'The meter reads 24 V: -K1:11 is joined to A:L+ by -F1:2-1, and -K1:14 is joined to A:L- by -H1:X1-X2, where no current flows (-K1:11-14 is open because -K1 has not operated) and nothing is dropped.',
      '-K1 is at rest: -B1:13-14 is open because -B1 is not actuated.',
    ]);
    const [closed, whyClosed] = read(measured('make -B1', '', '-K1:11', '-K1:14'));
    expect(closed).toBe(0);
    expect(whyClosed).toContain('-K1:11-14 is closed: -K1 has operated.');
  });

  it('tells what keeps a point from the poles of its own supply, whichever one and of how many phases', () => {
    const [, whyOther] = read(measured('', '', '-K1:21', '-K1:24'));
    expect(whyOther[0]).toContain(
      '-K1:24 is joined to B:L- by -H2:X1-X2, where no current flows (-K1:21-24 is open because -K1 has not operated)',
    );
    const phases = circuitOf(`
supply P 400 V 3AC
-S1 push-button make
-H1 lamp 230 V AC
P:L1 -S1:13-14 -H1:X1-X2 P:N`);
    const [volts, why] = read({ ...measured('', '', '-H1:X1', 'P:L1'), circuit: phases } as Question);
    expect(volts).toBeCloseTo(230.94, 2);
    expect(why[0]).toContain(
      '-H1:X1 is joined to P:N by -H1:X1-X2, where no current flows (-S1:13-14 is open because -S1 is not pressed)',
    );
  });

  it('shows nothing between isolated supplies, and says why', () => {
    const [volts, why] = read(measured('', '', 'A:L+', 'B:L-'));
    expect(volts).toBeNull();
    expect(why).toEqual([
      'The meter shows nothing, because supplies A and B are isolated from each other and have no common reference: A:L+ is a pole of supply A, and B:L- is a pole of supply B.',
    ]);
  });

  it('finds the voltage across a closed contact that is dirty', () => {
    const [volts, why] = read(measured('make -B1', '-K1:11-14 dirty 1000000 ohm', '-K1:11', '-K1:14'));
    expect(volts).toBeCloseTo(24, 1);
    expect(why).toContain(
      '-K1:11-14 is closed but dirty: its resistance is far above that of the load behind it.',
    );
  });

  it('has the sign of the first point against the second', () => {
    expect(read(measured('', '', 'A:L-', 'A:L+'))[0]).toBe(-24);
    expect(read(measured('', '', 'A:L+', 'A:L-'))[1]).toEqual([
      'The meter reads 24 V: A:L+ is a pole of supply A, and A:L- is a pole of supply A.',
    ]);
  });

  it('tells a point on a pole’s conductor, one that hangs free, and two on one conductor', () => {
    const [free, whyFree] = read(measured('', '-K1:A1 broken; -K1:A1-A2 open', '-K1:A1', '-F1:1'));
    expect(free).toBeNull();
    expect(whyFree).toEqual([
      'The meter shows nothing, because the two points have no common reference: nothing joins -K1:A1 to a supply, so it hangs free, and -F1:1 is on the conductor of A:L+.',
      'That the conductor at -K1:A1 is off changes nothing of what was asked: without that the same would stand.',
    ]);
    const [none, whyNone] = read(measured('', '', '-F1:2', '-B1:13'));
    expect(none).toBe(0);
    expect(whyNone[0]).toBe(
      'The meter reads 0 V, because both points have the same potential: -F1:2 is joined to A:L+ by -F1:2-1, and -B1:13 is joined to A:L+ by -F1:2-1.',
    );
  });

  it('tells what a load drops on the way, the nearest pole being the one with the fewest loads between', () => {
    const series = circuitOf(`
supply A 24 V DC
-K1 relay
-H1 lamp
-H2 lamp
-H3 lamp
A:L+ -H1:X1-X2 -H2:X1-X2 -H3:X1-X2 A:L-
A:L+ -K1:11-14 -H2:X1`);
    const question = { ...measured('', '', '-H2:X1', '-H2:X2'), circuit: series } as Question;
    const [volts, why] = read(question);
    expect(volts).toBeCloseTo(8, 6);
    expect(why).toEqual([
      'The meter reads 8 V: -H2:X1 is joined to A:L+ by -H1:X2-X1, where current flows, and -H1 drops 8 V, and -H2:X2 is joined to A:L- by -H3:X1-X2, where current flows, and -H3 drops 8 V.',
    ]);
  });
});

describe('the explanation of a wiring', () => {
  const question: Question = {
    kind: 'wiring',
    circuit: circuitOf(`
supply A 24 V DC
-F1 breaker
-B1 field-contact make
-K1 relay 2 poles
-H1 lamp
A:L+ -F1:1-2 -B1:13-14 -K1:A1-A2 A:L-
-H1:X1-X2 A:L-`),
    scenario: scenarioOf(),
    family: 'fixed',
    ends: ['-F1:2', '-H1:X1'],
    wanted: [
      { acts: [], load: '-H1', state: 'dark' },
      { acts: [...scenarioOf('make -B1').acts], load: '-H1', state: 'lit' },
    ],
    choices: [
      ['-K1:11', '-K1:12'],
      ['-K1:11', '-K1:14'],
      ['-K1:12', '-K1:14'],
      ['-K1:14', '-K1:22'],
    ],
  };

  it('goes through what is wanted with the right pair, and says what each other would do', () => {
    expect(rightAnswer(question)).toEqual({ kind: 'wiring', choice: 1 });
    expect(explained(question)).toEqual([
      'With the two ends on -K1:11 and -K1:14 everything stated comes true.',
      '1. -H1 is dark: -K1:11-14 is open because -K1 has not operated.',
      '-K1 is at rest: -B1:13-14 is open because -B1 is not actuated.',
      '2. -H1 is lit: it is fed from A:L+ through -F1:1-2 and -K1:11-14 (closed: -K1 has operated), and back to A:L-.',
      '-K1 has operated: its coil is fed from A:L+ through -F1:1-2 and -B1:13-14 (closed: -B1 is actuated), and back to A:L-.',
    ]);
    expect(story(question)).toEqual([
      '1. -B1 is actuated: -B1:13-14 makes.',
      '-K1 operates: its coil is fed from A:L+ through -F1:1-2 and -B1:13-14, and back to A:L-. It makes -K1:11-14.',
      'Not -K1:11 and -K1:12: under 1, -H1 is lit: it is fed from A:L+ through -F1:1-2 and -K1:11-12 (closed: -K1 has not operated), and back to A:L-.',
      'Not -K1:12 and -K1:14: no contact joins the two legs of a pole; the common -K1:11 is always used.',
      'Not -K1:14 and -K1:22: under 2, -H1 is dark: no closed path leads from one pole of a supply through it to the other.',
    ]);
  });

  it('tells whoever chose wrongly what would have come of just that choice', () => {
    const instead = (choice: number): string | undefined =>
      markAnswer(question, { kind: 'wiring', choice }).explanation.decides[0]!.behind[0]?.text;
    expect(instead(2)).toBe(
      'Not -K1:12 and -K1:14: no contact joins the two legs of a pole; the common -K1:11 is always used.',
    );
    expect(instead(0)).toMatch(/^Not -K1:11 and -K1:12: under 1, -H1 is lit/);
    expect(instead(1)).toBeUndefined();
  });
});

describe('the explanation of what is still live', () => {
  it('tells the pole that reaches each terminal, or the open place before it', () => {
    const circuit = circuitOf(`
supply A 230 V AC
supply B 24 V DC
-Q1 isolator
-F1 fuse
-K1 relay 2 poles 230 V AC
-H1 lamp 230 V AC
-H2 lamp 24 V DC
A:L -Q1:1-2 -F1:1-2 -K1:A1-A2 A:N
-F1:2 -K1:11-14 -H1:X1-X2 A:N
B:L+ -K1:21-22 -H2:X1-X2 B:L-`);
    const question: Question = {
      kind: 'still-live',
      circuit,
      scenario: scenarioOf('open -Q1'),
      family: 'fixed',
      asked: ['-Q1:1', '-F1:2', '-K1:22'],
    };
    expect(rightAnswer(question)).toEqual({
      kind: 'still-live',
      states: { '-Q1:1': 'live', '-F1:2': 'dead', '-K1:22': 'live' },
    });
    expect(explained(question)).toEqual([
      '-Q1:1 is live: it is on the conductor of A:L.',
      '-F1:2 is dead: -Q1:1-2 is open.',
      '-K1:22 is live: it is joined to B:L+ through -K1:21-22 (closed: -K1 has not operated).',
      '-K1 is at rest: -Q1:1-2 is open.',
      'On site this is proved, never taken from a drawing: isolate, lock off, prove dead with a proved tester.',
    ]);
    expect(story(question)).toEqual([
      'At the start -K1 operates: its coil is fed from A:L through -Q1:1-2 and -F1:1-2, and back to A:N. It breaks -K1:21-22 and makes -K1:11-14.',
      '1. Open -Q1: -Q1:1-2 opens.',
      '-K1 releases: -Q1:1-2 is open. It breaks -K1:11-14 and makes -K1:21-22.',
    ]);
  });
});
