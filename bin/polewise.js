#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const program = new URL('../dist/program/src/cli/main.js', import.meta.url);
if (existsSync(program)) await import(program.href);
else {
  process.stderr.write(
    `polewise has not been built: ${fileURLToPath(program)} is not there. Run npm run build in its folder.\n`,
  );
  process.exitCode = 1;
}
