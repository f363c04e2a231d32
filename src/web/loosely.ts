/** Replies are read as what this page knows of them: fields that a newer server has added are passed over. */
import type { z } from 'zod';

type Issue = z.core.$ZodIssue;
type Place = readonly PropertyKey[];
interface Unknown {
  readonly path: Place;
  readonly keys: readonly string[];
}

/** The unknown fields, where nothing else is wrong; undefined where something is. */
function unknownOf(issues: readonly Issue[], within: Place = []): readonly Unknown[] | undefined {
  const found: Unknown[] = [];
  for (const issue of issues) {
    const path = [...within, ...issue.path];
    if (issue.code === 'unrecognized_keys') found.push({ path, keys: issue.keys });
    else if (issue.code === 'invalid_union') {
      const one = issue.errors.map((option) => unknownOf(option, path)).find((option) => option?.length);
      if (!one) return undefined;
      found.push(...one);
    } else return undefined;
  }
  return found;
}

function without(value: unknown, { path: [step, ...path], keys }: Unknown): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (step === undefined)
    return Object.fromEntries(Object.entries(value).filter(([key]) => !keys.includes(key)));
  if (Array.isArray(value))
    return value.map((each, at) => (at === step ? without(each, { path, keys }) : each));
  return Object.fromEntries(
    Object.entries(value).map(([key, each]) => [key, key === step ? without(each, { path, keys }) : each]),
  );
}

/** What a reply says, as far as it is known here; undefined where it doesn't fit. */
export function readLoosely<T>(schema: z.ZodType<T>, value: unknown): T | undefined {
  let left = value;
  // What stands in what was passed over needn't be looked at; what a union hid may have to be, once more.
  for (;;) {
    const reading = schema.safeParse(left);
    if (reading.success) return reading.data;
    const unknown = unknownOf(reading.error.issues);
    if (!unknown) return undefined;
    left = unknown.reduce(without, left);
  }
}
