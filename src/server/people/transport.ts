/** How a request came: from where, by https or not, and under which address others reach the same server. */
import type { FastifyRequest } from 'fastify';
import { isLoopback } from '../own-site.ts';
import { ApiFailure } from '../problems.ts';

export interface TransportOptions {
  /** Trust X-Forwarded-Proto and X-Forwarded-For, because nobody but a proxy reaches this server. */
  readonly behindProxy?: boolean;
  /** Let passwords cross the network in the clear, because whoever runs it said so. */
  readonly plainHttp?: boolean;
  /** Under which links are handed out, `https://practice.example`; that of the request unless it is given. */
  readonly address?: string;
}

/** A proxy adds what it saw behind what it was told, so only the last one is its own. */
const lastOf = (header: string | string[] | undefined): string | undefined =>
  (Array.isArray(header) ? header.join(',') : header)?.split(',').at(-1)?.trim();

const hostName = (host: string): string => host.replace(/:\d+$/, '');

export class Transport {
  private readonly options: TransportOptions;

  constructor(options: TransportOptions = {}) {
    this.options = options;
  }

  isHttps({ headers }: FastifyRequest): boolean {
    return this.options.behindProxy === true && lastOf(headers['x-forwarded-proto']) === 'https';
  }

  /** Whose connection it is. */
  senderOf(request: FastifyRequest): string {
    const told = this.options.behindProxy ? lastOf(request.headers['x-forwarded-for']) : undefined;
    return told ?? request.ip;
  }

  /** The address to hand out, without a slash at its end. The host in a request has been held against the known ones. */
  originOf(request: FastifyRequest): string {
    const { address } = this.options;
    if (address) return address.replace(/\/+$/, '');
    return `${this.isHttps(request) ? 'https' : 'http'}://${request.headers.host}`;
  }

  /** Refuses what would send passwords and cookies through a network in the clear. */
  checkSecure(request: FastifyRequest): void {
    if (this.options.plainHttp || this.isHttps(request)) return;
    if (!this.options.behindProxy && isLoopback(hostName(request.headers.host ?? ''))) return;
    throw new ApiFailure({ says: 'not-secure' });
  }
}
