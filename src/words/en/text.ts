/** Small helpers of the English sentences. */

/** A sentence's first letter; designations begin with a hyphen and stay. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** A sentence that goes on after a colon; designations keep their capitals. */
export const lowered = (text: string): string =>
  /^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

/** Volts as a meter shows them: two places, without zeros at the end. */
export const volts = (value: number): string => `${Number(value.toFixed(2))} V`;

/** What is done in turn: `a, b then c`. */
export const listThen = (items: readonly string[]): string => {
  const last = items.at(-1) ?? '';
  return items.length < 2 ? last : `${items.slice(0, -1).join(', ')} then ${last}`;
};
