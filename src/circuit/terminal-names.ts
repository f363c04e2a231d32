/** Designations and terminals as text: `-K3:11` and `-K3:11-14`. */
import type { Step, TerminalRef } from '../../shared/circuit.ts';

export const DESIGNATION = /^-[A-Z]{1,3}[0-9]{1,4}$/;
export const SUPPLY_NAME = /^[A-Z]$/;
const TERMINAL = '[A-Z0-9]{1,4}[+-]?';
const REF = new RegExp(`^(-[A-Z]{1,3}[0-9]{1,4}|[A-Z]):(${TERMINAL})$`);
/** A sign belongs to the terminal before it: `L+-L-` is `L+` and `L-`. */
const LIST = new RegExp(`^(${TERMINAL})(?:-(${TERMINAL}))?(?:-(${TERMINAL}))?$`);

/** The designation that a word was meant to be, with its hyphen and its capitals put right; undefined where it is none. */
export function corrected(word: string): string | undefined {
  const right = `-${word.replace(/^[-\u2010-\u2015\u2212]*/, '').toUpperCase()}`;
  return DESIGNATION.test(right) ? right : undefined;
}

export interface TerminalPlace {
  /** A designation `-K3`, or a supply `A`. */
  readonly device: string;
  readonly terminal: string;
}

export const terminalRefOf = (device: string, terminal: string): TerminalRef => `${device}:${terminal}`;

/** Undefined where the text is no terminal in full. */
export function parseTerminalRef(text: string): TerminalPlace | undefined {
  const match = REF.exec(text);
  return match ? { device: match[1]!, terminal: match[2]! } : undefined;
}

/** `13-14` and `11-12-14` apart; undefined where it isn't one to three terminals joined by hyphens. */
export function parseTerminalList(text: string): string[] | undefined {
  const match = LIST.exec(text);
  return match ? match.slice(1).filter((name) => name !== undefined) : undefined;
}

export const stepText = ({ device, enter, leave }: Step): string =>
  `${device}:${enter}${leave === undefined ? '' : `-${leave}`}`;

/** Where the current goes on from a stop: its second terminal, or its only one. */
export const exitOf = (step: Step): TerminalRef => terminalRefOf(step.device, step.leave ?? step.enter);
export const entryOf = (step: Step): TerminalRef => terminalRefOf(step.device, step.enter);
