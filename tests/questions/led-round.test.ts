/** On drawings as found: a stop that something leads round is told of where it decides, and never on a drawing as it is meant. */
import { describe, expect, it } from 'vitest';
import type { Question } from '../../shared/question.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { families, generate } from '../../src/generator/index.ts';
import { historyOf } from '../../src/questions/explain/history.ts';
import { ledRound } from '../../src/questions/explain/led-round.ts';
import { blankAnswer, checkQuestion, rightAnswer } from '../../src/questions/index.ts';
import { isClosed } from '../../src/solver/index.ts';
import { atLeast, drawn } from '../support/drawn.ts';
import { markAnswer } from '../support/in-english.ts';
import { circuitOf, scenarioOf } from '../support/written.ts';

/** Ice works: a crusher whose seal comes from `from`, with an overload. */
const crusher = (from: string, asFound = true): Question['circuit'] =>
  circuitOf(`
# Ice works: crusher, start and stop
${asFound ? 'as-found' : ''}
supply A 24 V DC
-F1 breaker
-S1 push-button break make "Stop"
-S2 push-button make "Start"
-F2 overload
-K1 relay 2 poles
-H1 lamp "Running"
-H2 lamp "Stop is pressed"
A:L+ -F1:1-2 -S1:11-12 -F2:95-96 -S2:13-14 -K1:A1-A2 A:L-
${from} -K1:11-14 -K1:A1
-F1:2 -K1:21-24 -H1:X1-X2 A:L-
-F1:2 -S1:23-24 -H2:X1-X2 A:L-`);

const lamp = (circuit: Question['circuit'], scenario: Scenario): Question => ({
  kind: 'lamp-states',
  circuit,
  scenario,
  family: 'fixed',
  asked: ['-H1'],
});

function told(question: Question): string[] {
  expect(checkQuestion(question)).toEqual([]);
  return markAnswer(question, blankAnswer(question)).explanation.decides.flatMap(({ text, behind }) => [
    text,
    ...behind.map((step) => step.text),
  ]);
}
const round = (question: Question): string[] => told(question).filter((text) => text.startsWith('As found'));

const RUN = 'press -S2; release -S2';

describe('a stop that something leads round', () => {
  it('is told of under the relay that stays in past it', () => {
    expect(told(lamp(crusher('-F1:2'), scenarioOf(`${RUN}; press -S1`)))).toEqual([
      '-H1 is lit: it is fed from A:L+ through -F1:1-2 and -K1:21-24 (closed: -K1 has operated), and back to A:L-.',
      '-K1 has operated: its coil is fed from A:L+ through -F1:1-2 and -K1:11-14 (its own contact), and back to A:L-.',
      'As found, -K1:11-14 leads from -F1:2 to -K1:A1 past -S1:11-12, so -K1 stays in although that opens.',
    ]);
  });

  it('is told of where it was open for a time, and by the one that was', () => {
    expect(round(lamp(crusher('-F1:2'), scenarioOf(`${RUN}; trip -F2; reset -F2`)))).toEqual([
      'As found, -K1:11-14 leads from -F1:2 to -K1:A1 past -F2:95-96, so -K1 stays in although that opens.',
    ]);
    // Led round the overload alone: the stop stops it.
    expect(round(lamp(crusher('-S1:12'), scenarioOf(`${RUN}; trip -F2`)))).toHaveLength(1);
    expect(round(lamp(crusher('-S1:12'), scenarioOf(`${RUN}; press -S1; release -S1`)))).toEqual([]);
  });

  it('is told of where the relay was asked about itself, and to nobody who had it right', () => {
    const question: Question = {
      ...lamp(crusher('-F1:2'), scenarioOf(`${RUN}; press -S1`)),
      kind: 'relay-states',
      asked: ['-K1'],
    } as Question;
    expect(told(question).at(-1)).toMatch(/^As found, -K1:11-14 leads from -F1:2 to -K1:A1 past -S1:11-12/);
    const right = markAnswer(question, rightAnswer(question)).explanation.decides;
    expect(right.map(({ behind }) => behind)).toEqual([[]]);
  });

  it('is not told of where it decides nothing, where the drawing is as meant, and where nothing leads round', () => {
    expect(round(lamp(crusher('-F1:2'), scenarioOf(RUN)))).toEqual([]);
    expect(round(lamp(crusher('-F1:2', false), scenarioOf(`${RUN}; press -S1`)))).toEqual([]);
    expect(round(lamp(crusher('-F2:96'), scenarioOf(`${RUN}; press -S1`)))).toEqual([]);
    // It operates again after the stop was let go.
    expect(round(lamp(crusher('-F2:96'), scenarioOf(`press -S1; release -S1; ${RUN}`)))).toEqual([]);
  });

  it('is none where a button that breaks one way makes another: jogging isn’t stopping', () => {
    const jog = circuitOf(`
# Flour line: conveyor, jog
as-found
supply A 24 V DC
-S1 push-button break "Stop"
-S2 push-button make "Start"
-S3 push-button break make "Jog"
-K1 relay 2 poles
-H1 lamp
A:L+ -S1:11-12 -S2:13-14 -K1:A1-A2 A:L-
-S1:12 -S3:11-12 -K1:11-14 -K1:A1
-S1:12 -S3:23-24 -K1:A1
A:L+ -K1:21-24 -H1:X1-X2 A:L-`);
    expect(round(lamp(jog, scenarioOf('press -S2; press -S3')))).toEqual([]);
  });
});

describe('of generated drawings', () => {
  const each = (asFound: boolean, of: typeof families, seeds: number) =>
    of.flatMap(({ id, size }) =>
      Array.from({ length: seeds }, (_, number) => {
        const made = generate({
          seed: `round ${number}`,
          family: id,
          size: size.min + (number % 4),
          asFound,
        });
        return made.ok ? [{ about: `${id}, seed "round ${number}"`, draft: made.accepted.draft }] : [];
      }).flat(),
    );

  it('none as it is meant has a stop led round, whatever is said of it', () => {
    for (const { about, draft } of each(false, families, drawn(12))) {
      const history = historyOf({ ...draft.circuit, asFound: true }, draft.scenario);
      for (const { after } of history.stages)
        history.machine.plan.mechanisms.forEach((_, mechanism) => {
          expect(ledRound(history, after, mechanism), about).toBeUndefined();
        });
    }
  });

  it('what leads round is closed from end to end at a moment at which the stop is open and the relay in', () => {
    let found = 0;
    // Those with a stop or an overload.
    const stopped = families.filter(({ id }) => ['seal-in', 'jog', 'pump-out', 'interlocked'].includes(id));
    for (const { about, draft } of each(true, stopped, drawn(60))) {
      const history = historyOf(draft.circuit, draft.scenario);
      const { machine, stages } = history;
      const { plan } = machine;
      for (const { after } of stages)
        plan.mechanisms.forEach(({ id }, mechanism) => {
          const said = ledRound(history, after, mechanism)?.said;
          if (said?.says !== 'ledRound') return;
          found++;
          expect(said.relay, about).toBe(id);
          const nodes = (terminal: string): number[] => {
            const node = plan.nodeOf.get(terminal)!;
            return [node, ...plan.joins.filter((pair) => pair.includes(node)).flat()];
          };
          const partOf = ({ device, enter, leave }: (typeof said.by)[number]): number =>
            plan.switches.findIndex(
              (part) =>
                part.device === device && [part.from, part.to].sort().join() === [enter, leave].sort().join(),
            );
          let at = nodes(said.from);
          for (const hop of said.by) {
            expect(at, about).toContain(plan.nodeOf.get(`${hop.device}:${hop.enter}`));
            at = nodes(`${hop.device}:${hop.leave}`);
          }
          expect(at, about).toContain(plan.nodeOf.get(said.to));
          const stop = partOf(said.stop);
          const decided = stages.filter(
            ({ after: stage, state }) =>
              stage <= after &&
              state.at[mechanism] === 2 &&
              !isClosed(machine, state.at, stop) &&
              said.by.every((hop) => isClosed(machine, state.at, partOf(hop))),
          );
          expect(decided.length, about).toBeGreaterThan(0);
        });
    }
    expect(found).toBeGreaterThan(atLeast(10));
  });
});
