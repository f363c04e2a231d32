/** ` ```question id=vent-fan-1 skill=make-contact kind=lamp-states `: a question somebody wrote, with its answer. */
import type { LessonPart } from '../../../shared/bank.ts';
import type { Circuit } from '../../../shared/circuit.ts';
import { type QuestionKind, questionKind, question as questionSchema } from '../../../shared/question.ts';
import { nearest } from '../../circuit/index.ts';
import { changesCircuit } from '../../questions/index.ts';
import type { BankReport } from '../report.ts';
import { type CircuitInFile, keepRules, readNotation } from './circuit-text.ts';
import { confirm } from './confirm.ts';
import { type Field, type Fields, proseOf, readFields } from './fields.ts';
import type { Block, BlockHead } from './head.ts';
import { readerOf } from './kinds/index.ts';
import { namedCircuit, newName } from './names.ts';
import { type RulesOff, readRulesOff } from './rules-off.ts';
import { readScenario, SCENARIO_KEYS } from './scenario-fields.ts';
import type { TopicBlocks } from './topic-blocks.ts';

const KEYS = ['circuit', 'rules', ...SCENARIO_KEYS, 'answer', 'because'];
const LONGEST_REMARK = 2000;

export function readQuestionBlock(
  { head, content }: Block,
  blocks: TopicBlocks,
  report: BankReport,
): LessonPart | undefined {
  const { settings, position } = head;
  const id = newName(settings.get('id')!, blocks.questionNames, 'question', report);
  if (id !== undefined) blocks.questionNames.add(id);
  const skill = settings.get('skill')!;
  blocks.skillsNamed.push({ skill: skill.value, position: skill.position });
  const kind = readKind(head, report);
  if (kind === undefined) return undefined;
  const reader = readerOf(kind);
  const fields = readFields(content, [...KEYS, ...reader.keys], kind, report);
  if (!fields) return undefined;
  const remark = fields.get('because');
  if (remark && proseOf(remark).length > LONGEST_REMARK)
    report.add({ says: 'bank-value.remark', most: LONGEST_REMARK }, remark.position);
  const written = readCircuitOf(head, fields, blocks, report);
  const scenario = written && readScenario(fields, written.circuit, report);
  const asked =
    scenario &&
    reader.read({
      base: { circuit: written.circuit, scenario, family: 'fixed' },
      has: (key) => fields.get(key),
      need: (key) => needed(key, fields, head, report),
      report,
    });
  // One drawn with loose ends can keep the rules only joined as its answer says.
  if (written?.inFile && (asked || !changesCircuit(kind)))
    keepRules(written.inFile, written.off, report, asked?.drawn);
  if (!asked) return undefined;
  const parsed = questionSchema.safeParse(asked.question);
  if (!parsed.success) {
    report.add({ says: 'bank-value.question' }, position);
    return undefined;
  }
  if (!confirm(asked, position, blocks, report) || id === undefined) return undefined;
  blocks.questions.push({
    id,
    skill: skill.value,
    question: asked.question,
    answer: asked.answer,
    ...(remark ? { because: proseOf(remark) } : {}),
  });
  return { kind: 'question', question: id };
}

function readKind({ settings }: BlockHead, report: BankReport): QuestionKind | undefined {
  const { value, position } = settings.get('kind')!;
  const kind = questionKind.safeParse(value);
  if (kind.success) return kind.data;
  const kinds = questionKind.options;
  report.add({ says: 'bank-value.kind', word: value, meant: nearest(value, kinds), kinds }, position);
  return undefined;
}

function needed(
  key: string,
  fields: Fields,
  { kind, position }: BlockHead,
  report: BankReport,
): Field | undefined {
  const field = fields.get(key);
  if (field) return field;
  report.add({ says: 'bank-missing-key', kind, key }, position);
  return undefined;
}

interface WrittenCircuit {
  readonly circuit: Circuit;
  /** Where it stands in the question itself: there it is held against the drawing rules. */
  readonly inFile?: CircuitInFile;
  readonly off?: RulesOff;
}

/** The circuit that stands in the question, or the one from above that it names. */
function readCircuitOf(
  head: BlockHead,
  fields: Fields,
  blocks: TopicBlocks,
  report: BankReport,
): WrittenCircuit | undefined {
  const setting = head.settings.get('circuit');
  const rules = fields.get('rules');
  if (setting) {
    const own = [fields.get('circuit'), rules].filter((field) => field !== undefined);
    for (const field of own)
      report.add({ says: 'bank-repeated-key.circuit', key: field.key }, field.keyPosition);
    if (own.length > 0) return undefined;
    const circuit = namedCircuit(setting, blocks, report);
    return circuit && { circuit };
  }
  const field = needed('circuit', fields, head, report);
  const off = rules && readRulesOff(rules.text, rules.position, report);
  const inFile = field && readNotation(field.text, field.position, report);
  if (!inFile || (rules && !off)) return undefined;
  return { circuit: inFile.circuit, inFile, ...(off ? { off } : {}) };
}
