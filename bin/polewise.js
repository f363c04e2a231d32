#!/usr/bin/env node
import '../dist/program/src/cli/main.js';
