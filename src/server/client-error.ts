import type { Socket } from 'node:net';
import type { ApiProblemCode } from '../../shared/api.ts';
import { API_PROBLEMS } from './problems.ts';

const REASONS: Readonly<Record<string, readonly [code: ApiProblemCode, message: string, hint: string]>> = {
  HPE_HEADER_OVERFLOW: [
    'headers-too-large',
    'The headers are larger than 16 KiB.',
    'Clear the cookies of this address, or ask with fewer headers.',
  ],
  ERR_HTTP_REQUEST_TIMEOUT: [
    'too-slow',
    'The request did not arrive in time.',
    'Send it again, in smaller pieces where it is large.',
  ],
};
const OTHERWISE = [
  'bad-request',
  'That is not an HTTP request.',
  'See docs/api.md for what can be asked.',
] as const;

/** Answers what can't even be read as a request, and hangs up. */
export function replyToClientError(error: Error & { code?: string }, socket: Socket): void {
  if (error.code === 'ECONNRESET' || socket.destroyed || !socket.writable) {
    socket.destroy();
    return;
  }
  const [code, message, hint] = REASONS[error.code ?? ''] ?? OTHERWISE;
  const body = JSON.stringify({ code, message, hint });
  socket.end(
    `HTTP/1.1 ${API_PROBLEMS[code].status} Refused\r\ncontent-type: application/json; charset=utf-8\r\n` +
      `content-length: ${Buffer.byteLength(body)}\r\nconnection: close\r\n\r\n${body}`,
  );
}
