/**
 * What the shape of the data alone doesn't say: names that are used once and declared, terminals that exist, hops that lead
 * somewhere. The reader and the JSON reader both refuse a circuit that fails here, so inside the project it holds.
 */
import type { Concern } from '../findings.ts';
import { insideOf } from '../inside.ts';
import { LIMITS } from '../limits.ts';
import { contactFindings } from './contacts.ts';
import { listedSheets, namesTwice } from './names.ts';
import { pathFindings } from './paths.ts';
import { type PartialCircuit, type Unsound, unsoundAt } from './types.ts';

export { namesTwice, repeated } from './names.ts';

/** `tolerated`: names whose declaration could not be read; what their paths say of them is not checked. */
export function unsound(circuit: PartialCircuit, tolerated: ReadonlySet<string> = new Set()): Unsound[] {
  const tooBig = sizes(circuit);
  if (tooBig.length > 0) return tooBig;
  const sound = circuit.devices.map(contactFindings);
  return [
    ...unprintable(circuit),
    ...namesTwice(circuit).map(({ kind, name, concern }) =>
      unsoundAt({ says: kind === 'supply' ? 'duplicate-supply' : 'duplicate-designation', name }, concern),
    ),
    ...listedSheets(circuit),
    ...sound.flat(),
    ...pathFindings(circuit, tolerated, sound),
  ];
}

/** Texts go to terminals, pages and paper, one line each: nothing in them that steers a terminal or breaks the line. */
function unprintable({ title, supplies, devices, sheets }: PartialCircuit): Unsound[] {
  const findings: Unsound[] = [];
  const look = (text: string | undefined, concern: Concern) => {
    const at = text?.search(/[\p{Cc}\p{Zl}\p{Zp}]/u) ?? -1;
    if (text === undefined || at < 0) return;
    findings.push(unsoundAt({ says: 'control-character', char: text[at]! }, concern));
  };
  look(title, { kind: 'circuit' });
  supplies.forEach(({ text }, index) => {
    look(text, { kind: 'supply', index });
  });
  sheets.forEach((sheet, index) => {
    look(sheet.title, { kind: 'sheet', index });
  });
  devices.forEach((device, index) => {
    const points = 'points' in device ? device.points : [];
    for (const text of [device.text, ...points]) look(text, { kind: 'device', index, field: 'text' });
  });
  return findings;
}

function sizes({ devices, paths: all }: PartialCircuit): Unsound[] {
  const stops = all.reduce((sum, { steps }) => sum + steps.length, 0);
  const findings: Unsound[] = [];
  const over = (what: 'devices' | 'paths' | 'stops' | 'terminals', count: number) => {
    const most = LIMITS[what];
    if (count > most)
      findings.push(unsoundAt({ says: `too-large.${what}`, count, most }, { kind: 'circuit' }));
  };
  over('devices', devices.length);
  over('paths', all.length);
  over('stops', stops);
  if (findings.length > 0) return findings;
  over(
    'terminals',
    devices.reduce((sum, device) => sum + insideOf(device).terminals.length, 0),
  );
  return findings;
}
