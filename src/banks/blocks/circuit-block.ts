/** ` ```circuit id=vent-fan `: a circuit in the notation, drawn at rest where it stands. Its first line may be `rules: off …`. */
import type { LessonPart } from '../../../shared/bank.ts';
import type { BankReport } from '../report.ts';
import { keepRules, readNotation } from './circuit-text.ts';
import type { Block } from './head.ts';
import { newName } from './names.ts';
import { readRulesOff } from './rules-off.ts';
import type { TopicBlocks } from './topic-blocks.ts';

export function readCircuitBlock(
  { head, content }: Block,
  blocks: TopicBlocks,
  report: BankReport,
): LessonPart | undefined {
  const id = newName(head.settings.get('id')!, blocks.circuits, 'circuit', report);
  const { first, lines } = content;
  const rules = /^rules[ \t]*:[ \t]*/.exec(lines[0] ?? '');
  const rulesPosition = { line: first, column: (rules?.[0].length ?? 0) + 1 };
  const off = rules ? readRulesOff(lines[0]!.slice(rules[0].length), rulesPosition, report) : undefined;
  // The line of the rules becomes empty, so that the notation's lines keep their numbers.
  const text = (rules ? ['', ...lines.slice(1)] : lines).join('\n');
  const read = readNotation(text, { line: first, column: 1 }, report);
  if (read && (off || !rules)) keepRules(read, off, report);
  if (id === undefined) return undefined;
  blocks.circuits.set(id, read && { id, circuit: read.circuit });
  return read && { kind: 'drawing', circuit: id, scenario: null };
}
