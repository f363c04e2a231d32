/** Who may reach a server that is started with these options, and whether that can be let be. */
import { isLoopback, type TransportOptions } from '../../server/index.ts';
import { UsageError } from '../io.ts';

export interface ReachOptions {
  readonly host: string;
  readonly allowHost?: readonly string[];
  readonly class?: boolean;
  readonly behindProxy?: boolean;
  readonly plainHttp?: boolean;
  readonly address?: string;
}

/** What the server is told: names that it answers to, and how people's requests come when they sign in. */
export interface Reach {
  readonly hosts: readonly string[];
  readonly class?: TransportOptions;
}

function addressIn(text: string): URL {
  const url = URL.canParse(text) ? new URL(text) : null;
  if (url && /^https?:$/.test(url.protocol) && url.pathname === '/' && !url.search && !url.hash) return url;
  throw new UsageError(
    `--address ${text} is not the address of a server.`,
    'Give it as people open it, without a path: https://practice.example',
  );
}

/** Without a sign-in, whoever reaches the server is the learner: so others have to be let in on purpose. */
function soloReach({ host, allowHost = [], behindProxy, plainHttp, address }: ReachOptions): Reach {
  if (behindProxy || plainHttp || address !== undefined)
    throw new UsageError(
      '--behind-proxy, --plain-http and --address are for a server that people sign in to.',
      'Add --class, or leave them out.',
    );
  if (!isLoopback(host) && allowHost.length === 0)
    throw new UsageError(
      `With --host ${host} others could reach the server, and nobody has to sign in.`,
      'Leave it out; or let people sign in with --class; or put something that asks for a sign-in before it, and name it with --allow-host (docs/deploying.md).',
    );
  return { hosts: allowHost };
}

/** Where people sign in, passwords must not cross a network in the clear unless whoever runs it says so. */
function classReach({ host, allowHost = [], behindProxy, plainHttp, address }: ReachOptions): Reach {
  const url = address === undefined ? null : addressIn(address);
  const hosts = url ? [...allowHost, url.hostname] : allowHost;
  if (behindProxy && plainHttp)
    throw new UsageError('--behind-proxy and --plain-http contradict each other.', 'Leave one of them out.');
  if (!isLoopback(host) && !behindProxy && !plainHttp)
    throw new UsageError(
      `With --host ${host} passwords would cross the network in the clear.`,
      'Put a proxy that speaks https before it and say --behind-proxy; or, in a network whose every device you trust, say --plain-http (docs/deploying.md).',
    );
  if (url?.protocol === 'http:' && !isLoopback(url.hostname) && !plainHttp)
    throw new UsageError(
      `Links to ${url.origin} would cross the network in the clear.`,
      'Give the https address; or say --plain-http (docs/deploying.md).',
    );
  if ((behindProxy || !isLoopback(host)) && hosts.length === 0)
    throw new UsageError(
      'Nobody could open it: the server answers only to names that it knows.',
      'Name the address that people open: --address https://practice.example',
    );
  return {
    hosts,
    class: {
      behindProxy: behindProxy ?? false,
      plainHttp: plainHttp ?? false,
      ...(url ? { address: url.origin } : {}),
    },
  };
}

/** Throws a UsageError where others would get in, or get at passwords, whom nobody let in on purpose. */
export const reachOf = (options: ReachOptions): Reach =>
  options.class ? classReach(options) : soloReach(options);
