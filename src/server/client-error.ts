import type { Socket } from 'node:net';
import type { Refusal, Words } from '../words/index.ts';
import { ApiFailure } from './problems.ts';

const REASONS: Readonly<Record<string, Refusal>> = {
  HPE_HEADER_OVERFLOW: { says: 'headers-too-large' },
  ERR_HTTP_REQUEST_TIMEOUT: { says: 'too-slow' },
};

/** Answers what can't even be read as a request, and hangs up. */
export const repliesToClientErrors =
  (words: Words) =>
  (error: Error & { code?: string }, socket: Socket): void => {
    if (error.code === 'ECONNRESET' || socket.destroyed || !socket.writable) {
      socket.destroy();
      return;
    }
    const failure = new ApiFailure(REASONS[error.code ?? ''] ?? { says: 'bad-request.noHttp' });
    const body = JSON.stringify(failure.told(words));
    socket.end(
      `HTTP/1.1 ${failure.status} Refused\r\ncontent-type: application/json; charset=utf-8\r\n` +
        `content-length: ${Buffer.byteLength(body)}\r\nconnection: close\r\n\r\n${body}`,
    );
  };
