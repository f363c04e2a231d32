/**
 * The first piece of a value that a schema doesn't take. A schema by itself gathers all that is wrong and makes a sentence of each,
 * some thirty microseconds for every wrong piece: a list of 19,000 empty objects keeps everybody waiting for half a second.
 */
import { z } from 'zod';

export type Issue = z.core.$ZodIssue;

type Schema = z.core.$ZodType;
type Place = Readonly<Record<string, unknown>>;
const isPlace = (value: unknown): value is Place =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** What says everything of a list but what its elements have to be. */
const bareLists = new WeakMap<z.ZodArray, z.ZodArray>();
function bareList(list: z.ZodArray): z.ZodArray {
  const known = bareLists.get(list);
  if (known) return known;
  const bare = new z.ZodArray({ ...list.def, element: z.unknown() });
  bareLists.set(list, bare);
  return bare;
}

const nothing = z.strictObject({});

/** An object's name that stands for nothing. */
function unknownName({ shape, def }: z.ZodObject, value: Place): string | undefined {
  if (!(def.catchall instanceof z.ZodNever)) return undefined;
  return Object.keys(value).find((name) => !Object.hasOwn(shape, name));
}

/** Of several objects told apart by one field, the one that a value says it is. */
function optionOf({ def, options }: z.ZodDiscriminatedUnion, value: unknown): Schema | undefined {
  if (!isPlace(value)) return undefined;
  const says = value[def.discriminator];
  return options.find((option) => {
    const field = option instanceof z.ZodObject ? option.shape[def.discriminator] : undefined;
    return field instanceof z.ZodLiteral && field.values.has(says as string);
  });
}

/** What a value is held against: of several possibilities the one that it says it is. */
function meantBy(schema: Schema, value: unknown): Schema {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodNullable || schema instanceof z.ZodReadonly)
    return value === undefined || value === null ? schema : meantBy(schema.unwrap(), value);
  if (schema instanceof z.ZodDiscriminatedUnion) return optionOf(schema, value) ?? schema;
  return schema;
}

const issueOf = (schema: Schema, value: unknown): Issue | null =>
  z.safeParse(schema, value).error?.issues[0] ?? null;

const under = (key: PropertyKey, issue: Issue): Issue => ({ ...issue, path: [key, ...issue.path] });

/**
 * Looks through a value in steps, and no further than to what is wrong. Null doesn't say that all is right: what holds of a whole
 * object is for the schema itself to say, which costs little where its parts are right.
 */
export function* firstWrong(schema: Schema, value: unknown): Generator<undefined, Issue | null> {
  const meant = meantBy(schema, value);
  if (meant instanceof z.ZodArray && Array.isArray(value)) {
    const length = issueOf(bareList(meant), value);
    if (length) return length;
    for (const [index, inner] of value.entries()) {
      yield undefined;
      const wrong = yield* firstWrong(meant.element, inner);
      if (wrong) return under(index, wrong);
    }
    return null;
  }
  if (meant instanceof z.ZodRecord && isPlace(value)) {
    for (const [name, inner] of Object.entries(value)) {
      yield undefined;
      const wrong = issueOf(meant.keyType, name) ?? (yield* firstWrong(meant.valueType, inner));
      if (wrong) return under(name, wrong);
    }
    return null;
  }
  if (meant instanceof z.ZodObject && isPlace(value)) {
    const unknown = unknownName(meant, value);
    if (unknown !== undefined) return issueOf(nothing, { [unknown]: null });
    yield undefined;
    for (const [name, inner] of Object.entries(meant.shape)) {
      const wrong = yield* firstWrong(inner as Schema, value[name]);
      if (wrong) return under(name, wrong);
    }
    return null;
  }
  return issueOf(meant, value);
}
