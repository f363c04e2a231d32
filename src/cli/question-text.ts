import type { Circuit } from '../../shared/circuit.ts';
import type { Asked } from '../../shared/question.ts';
import { drawText } from '../drawing/index.ts';
import type { Io } from './io.ts';
import { styleFor, wrapText } from './style.ts';

/** A question as it is read in a terminal: the drawing at rest, what is done, and what to answer. */
export function questionText(
  circuit: Circuit,
  asked: Asked,
  io: Pick<Io, 'colour' | 'columns' | 'environment'>,
): string {
  const style = styleFor(io);
  const wrapped = (text: string, indent = ''): string => wrapText(`${indent}${text}`, io.columns, indent);
  const width = Math.max(...asked.items.map(({ label }) => label.length));
  const ascii = /^(C|POSIX)$/.test(io.environment['LC_ALL'] ?? io.environment['LANG'] ?? '');
  return [
    ...(circuit.title ? [style.strong(circuit.title), ''] : []),
    drawText(circuit, { columns: io.columns, ascii }),
    '',
    ...asked.situation.map((sentence) => wrapped(sentence)),
    '',
    ...asked.cautions.map((caution) => style.quiet(wrapped(`Caution: ${caution}`))),
    style.strong(wrapped(asked.task)),
    ...asked.items.map(({ label, choices, unit }) =>
      wrapped(
        `${label.padEnd(width)}  ${choices.length > 0 ? choices.join(' or ') : unit === 'V' ? 'in volts' : ''}`.trimEnd(),
        '  ',
      ),
    ),
    '',
    style.quiet(wrapped(asked.how)),
  ].join('\n');
}
