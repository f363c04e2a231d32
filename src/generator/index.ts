/** Fresh circuits: families of one kind each, and free ones; accepted only when they make a good question. */
export {
  type Acceptance,
  type Accepted,
  type AcceptOptions,
  accept,
  eachAsked,
  keepsRules,
  type Reason,
  type Refused,
  telling,
} from './accept.ts';
export {
  type CanonicalForm,
  canonicalForm,
  fingerprint,
} from './canonical/canonical-form.ts';
export { difficultyOf } from './difficulty.ts';
export { families } from './families/index.ts';
export { type Features, featuresOf } from './features.ts';
export { free } from './free.ts';
export {
  AS_FOUND_SHARE,
  familyOf,
  type Generated,
  type GenerateRequest,
  generate,
  type Refusals,
} from './generate.ts';
export type { Picture } from './picture.ts';
export { type Random, randomOf, seedOf } from './random.ts';
export type { Draft, DraftRequest, Family } from './types.ts';
