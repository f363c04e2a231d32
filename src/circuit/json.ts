/** Circuits as JSON: the same data, the same checks. */
import { type Circuit, circuit as circuitSchema } from '../../shared/circuit.ts';
import type { Checked, Problem } from '../../shared/problem.ts';
import { issueSaid } from './issues.ts';
import { readJson } from './json-mistake.ts';
import { LIMITS } from './limits.ts';
import { problemOf } from './places.ts';
import { circuitProblem } from './problem-codes.ts';
import { unsound } from './soundness/index.ts';

/** `devices[3].poles`, or nothing at the top. */
const pathText = (path: readonly PropertyKey[]): string =>
  path
    .map((part) => (typeof part === 'number' ? `[${part}]` : `.${String(part)}`))
    .join('')
    .replace(/^\./, '');

const refused = (problems: readonly Problem[]): Checked<Circuit> => ({
  ok: false,
  problems: problems.slice(0, LIMITS.problems),
});

/**
 * A circuit from JSON text, or from a value that was JSON. Every mistake is reported; only where a text stops being JSON has a line
 * and a column.
 */
export function readCircuitJson(source: unknown): Checked<Circuit> {
  let value = source;
  if (typeof source === 'string') {
    if (source.length > LIMITS.characters) {
      return refused([
        circuitProblem({
          says: 'too-large.characters',
          characters: source.length,
          most: LIMITS.characters,
        }),
      ]);
    }
    const text = source.replace(/^\ufeff/, '');
    const read = readJson(text);
    if (!read.ok) {
      const { found, ...place } = read.mistake;
      return refused([
        circuitProblem(found === undefined ? { says: 'bad-json.end' } : { says: 'bad-json', found }, place),
      ]);
    }
    value = read.value;
  }
  const parsed = circuitSchema.safeParse(value);
  if (!parsed.success) {
    return refused(
      parsed.error.issues.map((issue) => circuitProblem(issueSaid(issue, pathText(issue.path)))),
    );
  }
  const circuit: Circuit = parsed.data;
  const findings = unsound(circuit);
  return findings.length === 0
    ? { ok: true, value: circuit }
    : refused(findings.map((finding) => problemOf(finding, circuit)));
}
