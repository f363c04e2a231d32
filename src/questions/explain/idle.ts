/**
 * Faults and losses that a question tells of and that change nothing of what it asks: the same would stand without them, and for the
 * same reasons. Somebody who looks for what they do should hear that they do nothing.
 */
import type { Question, QuestionKind } from '../../../shared/question.ts';
import type { Act, Fault } from '../../../shared/scenario.ts';
import { actSaid, faultSaid } from '../../circuit/index.ts';
import { isClosed, type Machine, type State } from '../../solver/index.ts';
import type { ExplainingSaid, FaultSaid } from '../../words/index.ts';
import { loses } from '../happenings.ts';
import type { Kind } from '../kind.ts';
import { kindOf } from '../registry.ts';
import type { Decision, Explanation } from '../said.ts';
import { rightSolver } from '../solving.ts';
import { explainerOf } from './explainers.ts';

/** Something that a scenario would be without. */
type Idle =
  | { readonly kind: 'fault'; readonly fault: Fault }
  /** What is lost, and comes back where it does: places among the acts. */
  | { readonly kind: 'loss'; readonly acts: readonly number[] };

/** In the place of an act that isn't done; the others keep their numbers. */
const NOTHING: Act = { kind: 'wait', seconds: 0 };

function without(question: Question, idle: readonly Idle[]): Question {
  const faults = new Set(idle.flatMap((each) => (each.kind === 'fault' ? [each.fault] : [])));
  const undone = new Set(idle.flatMap((each) => (each.kind === 'loss' ? each.acts : [])));
  const { scenario } = question;
  return {
    ...question,
    scenario: {
      ...scenario,
      faults: scenario.faults.filter((fault) => !faults.has(fault)),
      acts: scenario.acts.map((act, index) => (undone.has(index) ? NOTHING : act)),
    },
  };
}

/** Whether an act brings back what another took away. */
const bringsBack = (act: Act, loss: Act): boolean =>
  loss.kind === 'fail'
    ? act.kind === 'restore' && act.supply === loss.supply
    : loss.kind === 'open' && act.kind === 'close' && act.device === loss.device;

function toldOf({ circuit, scenario: { faults, acts } }: Question): Idle[] {
  const losses = acts.flatMap((act, index): Idle[] => {
    if (!loses(circuit, act)) return [];
    const back = acts.findIndex((other, at) => at > index && bringsBack(other, act));
    return [{ kind: 'loss', acts: back < 0 ? [index] : [index, back] }];
  });
  return [...faults.map((fault): Idle => ({ kind: 'fault', fault })), ...losses];
}

/** Whether everything asked stands the same, and as surely, without some of what is told. */
function sameWithout(question: Question, idle: readonly Idle[]): boolean {
  const kind: Kind<QuestionKind> = kindOf(question.kind);
  const solver = rightSolver();
  const other = without(question, idle);
  if (kind.check(other, solver).length > 0) return false;
  const right = kind.answerBy(question, rightSolver().solve);
  const answer = kind.answerBy(other, solver.solve);
  if (!right || !answer) return false;
  const { parts } = kind.parts(question, answer, right);
  return parts.length > 0 && parts.every(({ correct }) => correct);
}

const isPart =
  ({ from, to }: { readonly from: string; readonly to: string }) =>
  (part: Machine['plan']['switches'][number]): boolean => {
    const ends = [`${part.device}:${part.from}`, `${part.device}:${part.to}`];
    return ends.includes(from) && ends.includes(to);
  };

/** How a faulty contact would stand without its fault, where that is always the same and the fault leaves it so. */
function anyway(question: Question, fault: Fault): 'open' | 'closed' | undefined {
  if (fault.kind !== 'welded' && fault.kind !== 'dirty' && fault.kind !== 'open') return undefined;
  const { circuit, scenario } = without(question, [{ kind: 'fault', fault }]);
  const { solve } = rightSolver();
  const stands = (machine: Machine, state: State): boolean | undefined => {
    const part = machine.plan.switches.findIndex(isPart(fault));
    return part < 0 ? undefined : isClosed(machine, state.at, part);
  };
  const wanted = fault.kind === 'welded';
  for (let after = 0; after <= scenario.acts.length; after++) {
    const at = solve(circuit, { ...scenario, acts: scenario.acts.slice(0, after) });
    if (!at || stands(at.machine, at.state) !== wanted) return undefined;
  }
  return wanted ? 'closed' : 'open';
}

/** What decides, and why. */
const reasonsOf = ({ decides }: Explanation): string =>
  JSON.stringify(decides.map(({ said: why, behind }) => [why, behind.map((reason) => reason.said)]));

/** Whether all that is told of what was asked is the same without it; what isn't has been told of by that. */
function unmentioned(question: Question, explanation: Explanation, idle: Idle): boolean {
  const other = explainerOf(question.kind).explain(without(question, [idle]));
  return reasonsOf(other) === reasonsOf(explanation);
}

const aboutOf = ({ scenario }: Question, idle: Idle): string[] =>
  idle.kind === 'fault'
    ? Object.entries(idle.fault).flatMap(([name, value]) =>
        name !== 'kind' && typeof value === 'string' ? [value] : [],
      )
    : idle.acts.slice(0, 1).flatMap((index) => {
        const act = scenario.acts[index]!;
        return 'device' in act ? [act.device] : [];
      });

/** Faults of which no more is to say are told together, everything else by itself. */
function toldIdle(
  question: Question,
  idle: readonly Idle[],
): { said: ExplainingSaid; of: readonly Idle[] }[] {
  const { circuit, scenario } = question;
  const plain: { fault: FaultSaid; of: Idle }[] = [];
  const told: { said: ExplainingSaid; of: readonly Idle[] }[] = [];
  for (const each of idle) {
    if (each.kind === 'loss') {
      const acts = each.acts.map((index) => ({
        number: index + 1,
        act: actSaid(scenario.acts[index]!, circuit),
      }));
      told.push({ said: { says: 'idleActs', acts }, of: [each] });
      continue;
    }
    const fault = faultSaid(each.fault, circuit);
    const stands = anyway(question, each.fault);
    if (stands) told.push({ said: { says: 'idleAnyway', fault, closed: stands === 'closed' }, of: [each] });
    else plain.push({ fault, of: each });
  }
  if (plain.length === 0) return told;
  const all = { says: 'idleFaults', all: plain.map(({ fault }) => fault) } as const;
  return [{ said: all, of: plain.map(({ of }) => of) }, ...told];
}

/**
 * Sentences of the faults and losses without which everything asked would stand the same. None where they are idle one by one, and
 * all of them together are not.
 *
 * @param explanation - what else is told: where that goes by a fault or a loss, there is no more to say about it
 */
export function idleIn(question: Question, explanation: Explanation): Decision[] {
  const idle = toldOf(question).filter((each) => sameWithout(question, [each]));
  if (idle.length > 1 && !sameWithout(question, idle)) return [];
  const untold = idle.filter(
    (each) =>
      (each.kind === 'fault' && anyway(question, each.fault)) || unmentioned(question, explanation, each),
  );
  return toldIdle(question, untold).map(({ said, of }) => ({
    said,
    brief: said,
    about: of.flatMap((each) => aboutOf(question, each)),
    behind: [],
  }));
}
