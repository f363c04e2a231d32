/** HTTP over the store and the banks, and the page beside it, from one port. */
export { createServer, type LogLevel, type ServerOptions } from './create-server.ts';
export { openApi } from './openapi.ts';
export { isLoopback } from './own-site.ts';
export { shownFirstRunKey } from './people/first-run.ts';
export { entryAddress } from './people/link-address.ts';
export { type HashCost, Passwords } from './people/passwords.ts';
export { wantedIn } from './people/roster-in.ts';
export { oneRosterFiles, rosterCsv } from './people/roster-out.ts';
export type { TransportOptions } from './people/transport.ts';
