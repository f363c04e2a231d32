/**
 * A marked paper as statements of the Experience API (xAPI 1.0.3): one for each item that was answered, one for the paper.
 * Verbs and activity types are those of the ADL vocabulary.
 */
import type { HomeworkSet, ItemMark, PaperMark } from '../../../shared/homework.ts';
import { tellAnswer } from '../../questions/index.ts';
import type { Words } from '../../words/index.ts';
import { earnedOf, totalOf } from '../marking/totals.ts';

/** Sent with every request as the header X-Experience-API-Version; statements themselves don't carry it. */
export const XAPI_VERSION = '1.0.3';

const VERBS = 'http://adlnet.gov/expapi/verbs/';
const ACTIVITIES = 'http://adlnet.gov/expapi/activities/';

export interface XapiActivity {
  readonly objectType: 'Activity';
  readonly id: string;
  readonly definition: {
    readonly type: string;
    readonly name: Readonly<Record<string, string>>;
  };
}

export interface XapiStatement {
  readonly id: string;
  readonly actor: {
    readonly objectType: 'Agent';
    readonly account: { readonly homePage: string; readonly name: string };
  };
  readonly verb: { readonly id: string; readonly display: Readonly<Record<string, string>> };
  readonly object: XapiActivity;
  readonly result: {
    readonly score: {
      readonly scaled: number;
      readonly raw: number;
      readonly min: number;
      readonly max: number;
    };
    readonly success?: boolean;
    readonly completion?: boolean;
    readonly response?: string;
    readonly duration?: string;
    readonly extensions?: Readonly<Record<string, unknown>>;
  };
  readonly context: {
    readonly contextActivities?: { readonly parent: readonly XapiActivity[] };
    readonly extensions: Readonly<Record<string, unknown>>;
  };
  readonly timestamp: string;
}

export interface XapiRequest {
  readonly words: Words;
  readonly set: HomeworkSet;
  readonly mark: PaperMark;
  /** Where sets are found, an absolute IRI without a slash at its end; ids of activities begin with it. */
  readonly base: string;
  /** The pseudonym: an account name that means nothing outside, on this site. */
  readonly account: { readonly homePage: string; readonly name: string };
  /** When it was submitted or closed, milliseconds since 1970. */
  readonly at: number;
  /** A UUID for each statement: items by their index from 0, the paper as `paper`. The same each time it is sent. */
  readonly uuidFor: (what: number | 'paper') => string;
}

/** Seconds as an ISO 8601 duration, to a hundredth as xAPI compares them. */
export function isoDuration(seconds: number): string {
  const hundredths = Math.round(seconds * 100);
  const hours = Math.floor(hundredths / 360_000);
  const minutes = Math.floor((hundredths % 360_000) / 6000);
  const rest = (hundredths % 6000) / 100;
  const parts = `${hours > 0 ? `${hours}H` : ''}${minutes > 0 ? `${minutes}M` : ''}`;
  return `PT${parts}${rest > 0 || parts === '' ? `${rest}S` : ''}`;
}

const scoreOf = (raw: number, max: number): XapiStatement['result']['score'] => ({
  scaled: Math.max(0, Math.min(1, raw / max)),
  raw,
  min: 0,
  max,
});

const responseOf = (words: Words, { mark }: ItemMark): string =>
  mark.parts
    .flatMap(({ item, given }) =>
      given ? [words.interchange.given({ item, answer: tellAnswer(words, given) })] : [],
    )
    .join('; ');

const activityOf = ({ words, base, set }: XapiRequest): XapiActivity => ({
  objectType: 'Activity',
  id: `${base}/sets/${set.id}`,
  definition: { type: `${ACTIVITIES}assessment`, name: { [words.speech.language]: set.title } },
});

const extensionsIn =
  ({ base }: XapiRequest) =>
  (name: string): string =>
    `${base}/extensions/${name}`;

/** What all statements of a paper have. */
const frameOf = ({ account, at }: XapiRequest) => ({
  actor: { objectType: 'Agent' as const, account },
  timestamp: new Date(at).toISOString(),
});

/** The one of an item that was answered. */
function itemStatement(request: XapiRequest, item: ItemMark, index: number): XapiStatement {
  const { words, set, mark, base, uuidFor } = request;
  const extension = extensionsIn(request);
  const { actor, timestamp } = frameOf(request);
  const ideas = item.mark.misconceptions;
  return {
    id: uuidFor(index),
    actor,
    verb: { id: `${VERBS}answered`, display: { en: 'answered' } },
    object: {
      objectType: 'Activity',
      id: `${base}/sets/${set.id}/places/${index + 1}`,
      definition: {
        type: `${ACTIVITIES}cmi.interaction`,
        name: { [words.speech.language]: `${set.title}, ${index + 1}: ${item.skill}` },
      },
    },
    result: {
      score: scoreOf(earnedOf(item), item.marks),
      success: item.mark.correct,
      response: responseOf(words, item),
      ...(item.secondsUsed === null ? {} : { duration: isoDuration(item.secondsUsed) }),
      ...(ideas.length > 0 ? { extensions: { [extension('misconceptions')]: ideas } } : {}),
    },
    context: {
      contextActivities: { parent: [activityOf(request)] },
      extensions: {
        [extension('attempt')]: mark.attempt,
        [extension('skill')]: item.skill,
        [extension('circuit')]: item.circuit,
      },
    },
    timestamp,
  };
}

/** The one of the paper as a whole. */
function paperStatement(request: XapiRequest): XapiStatement {
  const { mark, uuidFor } = request;
  const { actor, timestamp } = frameOf(request);
  const { earned, outOf } = totalOf(mark);
  const measured = mark.items.flatMap(({ secondsUsed }) => secondsUsed ?? []);
  return {
    id: uuidFor('paper'),
    actor,
    verb: { id: `${VERBS}completed`, display: { en: 'completed' } },
    object: activityOf(request),
    result: {
      score: scoreOf(earned, outOf),
      completion: true,
      ...(measured.length > 0
        ? { duration: isoDuration(measured.reduce((sum, seconds) => sum + seconds, 0)) }
        : {}),
    },
    context: { extensions: { [extensionsIn(request)('attempt')]: mark.attempt } },
    timestamp,
  };
}

/** The statements of one marked paper, those of the items first. */
export const xapiStatements = (request: XapiRequest): readonly XapiStatement[] => [
  ...request.mark.items.flatMap((item, index) =>
    item.answered === 'none' ? [] : [itemStatement(request, item, index)],
  ),
  paperStatement(request),
];
