#!/usr/bin/env node
import module from 'node:module';

// From Node 22.8 on: what has been compiled once is kept for the next start.
module.enableCompileCache?.();
await import('../dist/program/src/cli/main.js');
