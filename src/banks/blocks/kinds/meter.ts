/** `points: -K3:A1 -K3:A2`, `tolerance: 1 V` (0.5 V when it is left out) and `answer: 24 V` or `answer: nothing`. */
import type { BankReport } from '../../report.ts';
import { type Field, linesOfField, proseOf } from '../fields.ts';
import { readPair } from './terminal-pair.ts';
import type { KindReader } from './types.ts';

/** Fine enough to tell a lamp's share of 24 V from another's, coarse enough for rounding in the head. */
const TOLERANCE = 0.5;

export const meterReader: KindReader = {
  kind: 'meter',
  keys: ['points', 'tolerance'],
  read({ base, has, need, report }) {
    const pointsField = need('points');
    const answerField = need('answer');
    const toleranceField = has('tolerance');
    const [piece] = pointsField ? linesOfField(pointsField) : [];
    const points =
      pointsField && readPair(piece ?? { text: '', position: pointsField.position }, base.circuit, report);
    const tolerance = toleranceField ? readVolts(toleranceField, report) : TOLERANCE;
    const volts = answerField && (proseOf(answerField) === 'nothing' ? null : readVolts(answerField, report));
    if (tolerance !== undefined && tolerance <= 0) {
      report.add({ says: 'bank-field.tolerance' }, toleranceField!.position);
      return undefined;
    }
    if (!points || tolerance === undefined || volts === undefined) return undefined;
    return {
      question: { kind: 'meter', ...base, points, tolerance },
      answer: { kind: 'meter', volts },
      answered: new Map([['volts', { position: answerField!.position }]]),
    };
  },
};

function readVolts(field: Field, report: BankReport): number | undefined {
  const text = proseOf(field);
  const match = /^(-?\d{1,4}(?:\.\d{1,4})?)\s*V$/.exec(text);
  if (match) return Number(match[1]);
  report.add(
    { says: field.key === 'answer' ? 'bank-field.reading' : 'bank-field.volts', text },
    field.position,
  );
  return undefined;
}
