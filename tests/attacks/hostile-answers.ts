/** Practice answers that somebody made up to keep a server busy; each is of the right form, or as large as may be sent. */
import type { Circuit } from '../../shared/circuit.ts';
import type { AnswerRecord } from '../../shared/practice.ts';
import { readCircuit } from '../../src/circuit/index.ts';
import { answerWith } from '../support/answers.ts';
import { told } from '../support/in-english.ts';

const upTo = (count: number): readonly number[] => Array.from({ length: count }, (_, at) => at + 1);

function circuitOf(lines: readonly string[]): Circuit {
  const read = readCircuit(`supply A 24 V AC\n${lines.join('\n')}\n`);
  if (!read.ok)
    throw new Error(
      told(read.problems)
        .map(({ message }) => message)
        .join('\n'),
    );
  return read.value;
}

/** Every conductor joined to every other by a lamp. */
export function netOfLamps(conductors: number): Circuit {
  const pairs = upTo(conductors).flatMap((one) => upTo(one - 1).map((other) => [one, other] as const));
  return circuitOf([
    `-X1 terminals ${conductors}`,
    ...pairs.map((_, at) => `-H${at + 1} lamp`),
    'A:L -X1:1',
    '-X1:2 A:N',
    ...pairs.map(([one, other], at) => `-X1:${one} -H${at + 1}:X1-X2 -X1:${other}`),
  ]);
}

/** Flashers of periods that have little in common, so that the whole seldom comes back to where it was. */
export function flashers(count: number): Circuit {
  return circuitOf([
    ...upTo(count).map((at) => `-K${at} flasher ${at} s on ${at + 1} s off`),
    '-H1 lamp',
    ...upTo(count).map((at) => `A:L -K${at}:A1-A2 A:N`),
    ...upTo(count).map((at) => `A:L -K${at}:15-18 -H1:X1`),
    '-H1:X2 A:N',
  ]);
}

/** Relays in a ring of break contacts: each lets go of the next. */
export function ring(relays: number): Circuit {
  return circuitOf([
    ...upTo(relays).map((at) => `-K${at} relay`),
    '-H1 lamp',
    ...upTo(relays).map((at) => `A:L -K${at}:11-12 -K${(at % relays) + 1}:A1-A2 A:N`),
    'A:L -K1:11-14 -H1:X1-X2 A:N',
  ]);
}

/** Relays that all let go of one another: whichever is first. */
export function rivals(relays: number): Circuit {
  return circuitOf([
    ...upTo(relays).map((at) => `-K${at} relay 4 poles`),
    '-H1 lamp',
    ...upTo(relays).map(
      (at) =>
        `A:L ${upTo(3)
          .map((step) => `-K${((at + step - 1) % relays) + 1}:${step}1-${step}2`)
          .join(' ')} -K${at}:A1-A2 A:N`,
    ),
    'A:L -K1:41-44 -H1:X1-X2 A:N',
  ]);
}

/** An answer about a lamp of this circuit after these acts. */
export function answerAbout(
  circuit: Circuit,
  acts: AnswerRecord['question']['scenario']['acts'],
  { id, learner, at = 0 }: { readonly id: string; readonly learner: string; readonly at?: number },
): AnswerRecord {
  const record = answerWith({ id, at, learner });
  const { question } = record;
  return {
    ...record,
    question: {
      ...question,
      kind: 'lamp-states',
      circuit,
      asked: ['-H1'],
      scenario: { ...question.scenario, acts },
    },
    answer: { kind: 'lamp-states', states: { '-H1': 'lit' } },
  } as AnswerRecord;
}

const waits = (count: number) => upTo(count).map(() => ({ kind: 'wait', seconds: 86_400 }) as const);

/** Bodies of requests to keep practice answers, by what is hard about them. */
export function hostileAnswers(learner: string): Readonly<Record<string, readonly string[]>> {
  const about = (name: string, circuit: Circuit, acts = waits(0), count = 20): readonly string[] => [
    JSON.stringify({
      answers: upTo(count).map((at) => answerAbout(circuit, acts, { id: `${name}-${at}`, learner })),
    }),
  ];
  const bodies = (answers: string): readonly string[] => upTo(8).map(() => `{"answers":${answers}}`);
  const large = (value: unknown): readonly string[] => bodies(JSON.stringify(value));
  const one = answerWith({ id: 'x', at: 0, learner });
  const withLamps = (states: object): unknown => ({ ...one, answer: { kind: 'lamp-states', states } });
  const names = (count: number, of = ''): object =>
    Object.fromEntries(upTo(count).map((at) => [`k${of}-${at}`, 'x']));
  const text = (unit: string): readonly string[] => bodies(`["${unit.repeat(1_950_000 / unit.length)}"]`);
  return {
    'a net of lamps': about('net', netOfLamps(14)),
    'flashers that are waited for': about('flashers', flashers(50), waits(40)),
    'more flashers and waits than are marked': about('more', flashers(100), waits(200), 5),
    'a ring of relays': about('ring', ring(59)),
    'relays that race': about('rivals', rivals(12)),
    'eight bodies of four million zeros': large([Array.from({ length: 2_000_000 }, () => 0)]),
    'eight bodies of wrong pieces': large(
      upTo(20).map(() => ({ id: 'x', question: Array.from({ length: 19_000 }, () => ({})) })),
    ),
    'eight bodies of wrong pieces, as many as are looked at': large(
      upTo(15).map(() => ({
        ...one,
        mark: { ...one.mark, explanation: Array.from({ length: 4_500 }, () => ({})) },
      })),
    ),
    'eight bodies of names that were never seen': large(
      upTo(13).map((at) => withLamps(names(9_900, `${at}`))),
    ),
    'eight bodies of one object with all their names': large([names(140_000)]),
    'eight bodies nested without end': bodies(`${'{"a":['.repeat(70_000)}${']}'.repeat(70_000)}`),
    'eight bodies of long texts, too large to be read': large(
      upTo(15).map((at) => ({ ...one, id: `long-${at}`, circuit: 'c'.repeat(250_000) })),
    ),
    'eight bodies of long texts': large(
      upTo(7).map((at) => ({ ...one, id: `long-${at}`, circuit: 'c'.repeat(250_000) })),
    ),
    'eight bodies of one text': text('c'),
    'eight bodies of one text, all of it escaped': text('\\n'),
    'eight bodies of one text of halves of characters': text('\\ud800'),
    'eight bodies of one text of other letters': bodies(`["${'Ж'.repeat(950_000)}"]`),
  };
}
