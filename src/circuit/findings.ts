/** What is wrong with a circuit, and what in it is concerned, so that it can be placed on a line of its text. */

export type Concern =
  | { readonly kind: 'circuit' }
  | { readonly kind: 'supply'; readonly index: number }
  /** `field`: the value that is wrong; `terminal`: one of its terminals. */
  | { readonly kind: 'device'; readonly index: number; readonly field?: string; readonly terminal?: string }
  | { readonly kind: 'sheet'; readonly index: number }
  | { readonly kind: 'path'; readonly path: number }
  | { readonly kind: 'step'; readonly path: number; readonly step: number };

export interface Found {
  /** What is wrong. */
  readonly message: string;
  /** What would be right. */
  readonly hint: string;
  readonly concern: Concern;
}

export interface Finding<Code extends string = string> extends Found {
  /** From docs/errors.md. */
  readonly code: Code;
}
