/** HTTP over the store and the banks, and the page beside it, from one port. */
export { createServer, type LogLevel, type ServerOptions } from './create-server.ts';
export { openApi } from './openapi.ts';
export { isLoopback } from './own-site.ts';
