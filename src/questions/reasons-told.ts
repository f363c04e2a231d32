/**
 * Which reasons are told under which of the things asked. What several things hang on is told once, under the first of them; what is told of
 * a relay that was asked about itself is told there, with all that stands behind it. Nothing is told whose connection is missing: where
 * only the far end of a chain is news, the chain is told.
 */
import type { Decision, ExplanationStep, Reason, ToldOf } from './said.ts';

const keyOf = ({ relay, moment }: ToldOf): string => `${moment} ${relay}`;

/** What a statement says of whatever it tells of, at whatever moment. */
const saying = ({ said }: ExplanationStep): string =>
  JSON.stringify({ ...said, item: undefined, after: undefined });

type OfRelay = Reason & { readonly of: ToldOf };
const ofRelay = (reason: Reason): reason is OfRelay => reason.of !== undefined;

/** Those by which a reason hangs on what was asked, in the same moment. */
const above = ({ of: { moment }, under = [] }: OfRelay): string[] =>
  under.map((relay) => keyOf({ relay, moment }));

/** What a reason hangs on by which it is reached; nothing where what was asked hangs on it itself. */
type Ways = ReadonlyMap<string, string | undefined>;

/** Reasons that what was asked hangs on without passing one that is told elsewhere. */
function reached(reasons: readonly OfRelay[], elsewhere: ReadonlySet<string>): Ways {
  const found = new Map<string, string | undefined>();
  for (let before = -1; before < found.size; ) {
    before = found.size;
    for (const reason of reasons) {
      const key = keyOf(reason.of);
      if (found.has(key) || elsewhere.has(key)) continue;
      const over = above(reason);
      const by = over.find((each) => found.has(each));
      if (over.length === 0 || by !== undefined) found.set(key, by);
    }
  }
  return found;
}

/** Some of them, and all that lies between them and what was asked. */
function withWays(ways: Ways, wanted: ReadonlySet<string>): ReadonlySet<string> {
  const all = new Set<string>();
  for (const each of wanted)
    for (let key: string | undefined = each; key !== undefined && !all.has(key); key = ways.get(key))
      all.add(key);
  return all;
}

/**
 * The reasons to tell under each decision.
 *
 * @param inFull - whether a decision is told with its reasons
 */
export function reasonsTold(
  decisions: readonly Decision[],
  inFull: (decision: Decision) => boolean,
): ReadonlyMap<Decision, readonly ExplanationStep[]> {
  const full = decisions.filter(inFull);
  const elsewhere = new Set(full.flatMap(({ of }) => (of ? [keyOf(of)] : [])));
  const latest = new Map<string, string>();
  const told = new Map<Decision, readonly ExplanationStep[]>();
  for (const decision of full) {
    const ways = reached(decision.behind.filter(ofRelay), elsewhere);
    const reasons = decision.behind.filter((reason) => !ofRelay(reason) || ways.has(keyOf(reason.of)));
    const news = new Set<string>();
    for (const reason of reasons.filter(ofRelay)) {
      if (latest.get(reason.of.relay) !== saying(reason)) news.add(keyOf(reason.of));
      latest.set(reason.of.relay, saying(reason));
    }
    if (decision.of) latest.set(decision.of.relay, saying(decision));
    const wanted = withWays(ways, news);
    told.set(
      decision,
      reasons.filter((reason) => !ofRelay(reason) || wanted.has(keyOf(reason.of))),
    );
  }
  return told;
}
