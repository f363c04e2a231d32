/** Who may reach a server that is started with these options, and whether that can be let be. */
import { isLoopback, type TransportOptions } from '../../server/index.ts';
import type { CommandWords } from '../../words/commands.ts';
import { UsageError } from '../io.ts';

type ReachWords = CommandWords['serve']['reach'];

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

function addressIn(text: string, { noAddress }: ReachWords): URL {
  const url = URL.canParse(text) ? new URL(text) : null;
  if (url && /^https?:$/.test(url.protocol) && url.pathname === '/' && !url.search && !url.hash) return url;
  throw new UsageError(noAddress.wrong(text), noAddress.right);
}

/** Without a sign-in, whoever reaches the server is the learner: so others have to be let in on purpose. */
function soloReach(
  { host, allowHost = [], behindProxy, plainHttp, address }: ReachOptions,
  said: ReachWords,
): Reach {
  if (behindProxy || plainHttp || address !== undefined)
    throw new UsageError(said.onlyForClasses.wrong, said.onlyForClasses.right);
  if (!isLoopback(host) && allowHost.length === 0)
    throw new UsageError(said.nobodySignsIn.wrong(host), said.nobodySignsIn.right);
  return { hosts: allowHost };
}

/** Where people sign in, passwords must not cross a network in the clear unless whoever runs it says so. */
function classReach(
  { host, allowHost = [], behindProxy, plainHttp, address }: ReachOptions,
  said: ReachWords,
): Reach {
  const url = address === undefined ? null : addressIn(address, said);
  const hosts = url ? [...allowHost, url.hostname] : allowHost;
  if (behindProxy && plainHttp) throw new UsageError(said.proxyAndPlain.wrong, said.proxyAndPlain.right);
  if (!isLoopback(host) && !behindProxy && !plainHttp)
    throw new UsageError(said.passwordsInTheClear.wrong(host), said.passwordsInTheClear.right);
  if (url?.protocol === 'http:' && !isLoopback(url.hostname) && !plainHttp)
    throw new UsageError(said.linksInTheClear.wrong(url.origin), said.linksInTheClear.right);
  if ((behindProxy || !isLoopback(host)) && hosts.length === 0)
    throw new UsageError(said.noName.wrong, said.noName.right);
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
export const reachOf = (options: ReachOptions, { serve: { reach } }: CommandWords): Reach =>
  options.class ? classReach(options, reach) : soloReach(options, reach);
