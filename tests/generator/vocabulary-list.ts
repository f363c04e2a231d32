/** Everything that can be read on generated drawings, and in the acts and faults told of them: by what says it. */
import type { Circuit } from '../../shared/circuit.ts';
import type { Scenario } from '../../shared/scenario.ts';
import { actSaid, actsOn, faultSaid } from '../../src/circuit/index.ts';
import { families, free, randomOf } from '../../src/generator/index.ts';
import { acts, faults } from '../../src/words/en/circuit.ts';
import { say } from '../../src/words/statement.ts';

/** One number for all: `Vent fan 2 tripped` and `Vent fan 5 tripped` are the same words. A standard keeps its own. */
const plain = (text: string): string => text.replace(/(?<!ISO )(?<![.\d])\d+(?:\.\d+)?/g, '#');

/** Lists by what they are of; a list's texts in no order. */
export type Lists = Map<string, Set<string>>;

function note(lists: Lists, list: string, text: string | undefined): void {
  if (text === undefined) return;
  const known = lists.get(list) ?? new Set();
  lists.set(list, known.add(plain(text)));
}

/** Two colours that say the same. */
const shade = (colour: string): string => (/^(?:yellow|amber)$/.test(colour) ? 'yellow or amber' : colour);

function noteCircuit(lists: Lists, circuit: Circuit): void {
  // A title is a plant with a machine, and what the drawing is about.
  const [, subject, about] = /^(.*?)(?:, (.*))?$/.exec(circuit.title!)!;
  note(lists, 'title: what it is of', subject);
  note(lists, 'title: what it is about', about);
  for (const { text } of circuit.supplies) note(lists, 'supply', text);
  for (const { title } of circuit.sheets) note(lists, 'sheet', title);
  for (const device of circuit.devices) {
    const colour = device.kind === 'lamp' && device.colour ? `, ${shade(device.colour)}` : '';
    note(lists, `${device.kind}${colour}`, device.text);
    if (device.kind === 'inputs') for (const point of device.points) note(lists, 'point of inputs', point);
    for (const act of actsOn(device)) {
      const said = say(acts, actSaid(act, circuit));
      note(lists, 'act', device.text ? said.replace(device.text, '…') : said);
    }
  }
}

function noteScenario(lists: Lists, circuit: Circuit, scenario: Scenario): void {
  for (const fault of scenario.faults) note(lists, 'fault', say(faults, faultSaid(fault, circuit)));
}

/** What `seeds` drafts of every family and size have on them. */
export function vocabularyOf(seeds: number, label: string): Lists {
  const lists: Lists = new Map();
  for (const family of [...families, free])
    for (let size = family.size.min; size <= family.size.max; size++)
      for (let seed = 0; seed < seeds; seed++) {
        const { circuit, scenario, others } = family.draft(randomOf(`${label} ${seed}`), { size });
        noteCircuit(lists, circuit);
        for (const each of [scenario, ...others]) noteScenario(lists, circuit, each);
      }
  return lists;
}
