/** What is wrong with a circuit, and what in it is concerned, so that it can be placed on a line of its text. */
import type { Said } from '../words/index.ts';

export type Concern =
  | { readonly kind: 'circuit' }
  | { readonly kind: 'supply'; readonly index: number }
  /** `field`: the value that is wrong; `terminal`: one of its terminals. */
  | { readonly kind: 'device'; readonly index: number; readonly field?: string; readonly terminal?: string }
  | { readonly kind: 'sheet'; readonly index: number }
  | { readonly kind: 'path'; readonly path: number }
  | { readonly kind: 'step'; readonly path: number; readonly step: number };

/** `S`: what there is to say of it. */
export interface Found<S extends Said = Said> {
  readonly said: S;
  readonly concern: Concern;
}

export interface Finding<S extends Said = Said> extends Found<S> {
  /** From docs/errors.md. */
  readonly code: string;
}
