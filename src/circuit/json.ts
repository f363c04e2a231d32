/** Circuits as JSON: the same data, the same checks. */
import { type Circuit, circuit as circuitSchema } from '../../shared/circuit.ts';
import type { Checked, Problem } from '../../shared/problem.ts';
import { wordIssue } from './issues.ts';
import { LIMITS } from './limits.ts';
import { problemOf } from './places.ts';
import { unsound } from './soundness/index.ts';

/** `devices[3].poles: `, or nothing at the top. */
function pathWords(path: readonly PropertyKey[]): string {
  const words = path
    .map((part) => (typeof part === 'number' ? `[${part}]` : `.${String(part)}`))
    .join('')
    .replace(/^\./, '');
  return words === '' ? '' : `${words}: `;
}

const refused = (problems: readonly Problem[]): Checked<Circuit> => ({
  ok: false,
  problems: problems.slice(0, LIMITS.problems),
});

/** A circuit from JSON text, or from a value that was JSON. Every mistake is reported; none has a line. */
export function readCircuitJson(source: unknown): Checked<Circuit> {
  let value = source;
  if (typeof source === 'string') {
    if (source.length > LIMITS.characters) {
      return refused([
        {
          code: 'too-large',
          message: `This is too long to be read: ${source.length} characters, at most ${LIMITS.characters}.`,
          hint: 'Divide it into several circuits.',
        },
      ]);
    }
    try {
      value = JSON.parse(source.replace(/^\ufeff/, ''));
    } catch (error) {
      const reason = error instanceof Error ? error.message : '';
      return refused([
        {
          code: 'bad-json',
          message: `This is no JSON: ${reason}.`,
          hint: 'Write a circuit in the notation to JSON to see what it looks like.',
        },
      ]);
    }
  }
  const parsed = circuitSchema.safeParse(value);
  if (!parsed.success) {
    return refused(
      parsed.error.issues.map((issue) => {
        const { code, message, hint } = wordIssue(issue);
        return { code, message: `${pathWords(issue.path)}${message}`, hint };
      }),
    );
  }
  const circuit: Circuit = parsed.data;
  const findings = unsound(circuit);
  return findings.length === 0
    ? { ok: true, value: circuit }
    : refused(findings.map((finding) => problemOf(finding, circuit)));
}
