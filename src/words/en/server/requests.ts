/** Why a request is refused, whatever it is for. */
import { type StatementOf, say } from '../../statement.ts';
import { type FormSaid, forms } from '../forms.ts';
import { shown } from '../problems/parts.ts';
import { speech } from '../speech.ts';
import { store } from '../store.ts';

type StoreFailure = StatementOf<(typeof store)['failures']['wrong']>;

const ONE_JSON = 'Send one JSON value, as docs/api.md shows, with content-type application/json.';
const FEWER = 'Send fewer answers at a time.';
const WHAT_CAN_BE_ASKED = 'See docs/api.md for what can be asked.';
const WHAT_IT_TAKES = 'docs/api.md and /api/openapi.json say what this route takes.';

export const requests = {
  // What came can't be read.
  'bad-request.noHttp': { wrong: 'That is not an HTTP request.', right: WHAT_CAN_BE_ASKED },
  'bad-request': { wrong: 'The request is not as it should be.', right: WHAT_CAN_BE_ASKED },
  'bad-request.address': { wrong: "The address of the request can't be read.", right: WHAT_CAN_BE_ASKED },
  'bad-request.length': {
    wrong: 'The body is longer or shorter than the request says.',
    right: 'Send its length in bytes as content-length, or leave it out.',
  },
  'headers-too-large': {
    wrong: 'The headers are larger than 16 KiB.',
    right: 'Clear the cookies of this address, or ask with fewer headers.',
  },
  'too-slow': {
    wrong: 'The request did not arrive in time.',
    right: 'Send it again, in smaller pieces where it is large.',
  },
  'wrong-media-type': { wrong: 'Only JSON is read here.', right: ONE_JSON },
  'bad-json.empty': { wrong: 'The body is empty.', right: ONE_JSON },
  'bad-json': { wrong: 'The body is not JSON.', right: ONE_JSON },
  'bad-json.at': ({ found, line, column }: { found: string; line: number; column: number }) => ({
    wrong: `The body is not JSON: in line ${line}, column ${column}, ${shown(found)} can't stand.`,
    right: ONE_JSON,
  }),
  'bad-json.end': { wrong: 'The body is not JSON: it ends too early.', right: ONE_JSON },
  'body-too-large': { wrong: 'The body is larger than this route takes.', right: FEWER },
  'body-too-large.values': ({ most }: { most: number }) => ({
    wrong: `The body has more than ${most} values.`,
    right: FEWER,
  }),
  'body-too-large.inPiece': ({ most }: { most: number }) => ({
    wrong: `One thing in the body has more than ${most} values.`,
    right: FEWER,
  }),
  'body-too-large.deep': ({ most }: { most: number }) => ({
    wrong: `The body has more than ${most} lists and objects inside one another.`,
    right: FEWER,
  }),
  'bad-value.body': ({ form }: { form: FormSaid }) => ({
    wrong: `The body is not of the form wanted. ${say(forms, form)}`,
    right: WHAT_IT_TAKES,
  }),
  'bad-value.query': ({ form }: { form: FormSaid }) => ({
    wrong: `The query is not of the form wanted. ${say(forms, form)}`,
    right: WHAT_IT_TAKES,
  }),

  // Nothing is there, or not for those who ask.
  'no-such-route': { wrong: 'There is nothing at this address.', right: 'docs/api.md lists what there is.' },
  'no-such-route.whileSolo': {
    wrong: 'There is nothing at this address while nobody signs in.',
    right: 'People and classes are there when the server was started with serve --class.',
  },
  'wrong-method': ({ method, possible }: { method: string; possible: readonly string[] }) => ({
    wrong: `${method} is not possible here.`,
    right: `Possible: ${possible.join(', ')}.`,
  }),
  'no-such-thing': {
    wrong: 'There is no such thing here.',
    right: 'It may have been removed, or belong to others.',
  },
  'foreign-host': {
    wrong: 'This server does not answer to that name.',
    right: 'Open it as http://localhost with its port, or start it with --allow-host and the name.',
  },
  'foreign-site': {
    wrong: 'A page of another site asked for this.',
    right: 'Use the page that this server itself serves.',
  },
  'not-secure': {
    wrong: 'Here passwords would cross the network in the clear.',
    right: 'Open it with https:// (docs/deploying.md says how to set it up).',
  },

  // The server can't, or not now.
  stopping: { wrong: 'The server is being stopped.', right: 'Send it again when it has been started.' },
  'stopping.notReady': {
    wrong: 'The server is being stopped.',
    right: 'Ask again when it has been started.',
  },
  'store-unavailable': ({ failure }: { failure: StoreFailure }) => ({
    wrong: say(store.failures.wrong, failure),
    right: say(store.failures.right, failure),
  }),
  'store-unavailable.late': ({ seconds }: { seconds: number }) => ({
    wrong: `The database has not answered within ${speech.number(seconds)} seconds.`,
    right: 'Look at the database, and at what it is busy with.',
  }),
  'too-busy.answers': {
    wrong: 'More answers wait to be kept than can be held.',
    right: 'Send them again in some seconds; none of these was kept.',
  },
  'too-busy.work': {
    wrong: 'More work waits to be done than can be held.',
    right: 'Send it again in a minute.',
  },
  'too-busy.signingIn': {
    wrong: 'Too many people sign in at this moment.',
    right: 'Try again in some seconds.',
  },
  'too-busy.papers': {
    wrong: 'Too many papers of this set are being made at the same time.',
    right: 'Try again in a moment.',
  },
  'internal-fault': {
    wrong: 'A fault in the server itself.',
    right: 'Nothing that was acknowledged is lost. Please report it with what you did; the log says more.',
  },
};
