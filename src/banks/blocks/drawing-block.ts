/**
 * ` ```drawing circuit=vent-fan `: a circuit from above as it stands after a scenario (`start`, `fault`, `do`). `shows` says
 * what is to be seen there, and the solver has to confirm it: `shows: -H1 dark, -K3 operated`.
 */
import type { LessonPart } from '../../../shared/bank.ts';
import type { Circuit } from '../../../shared/circuit.ts';
import type { Scenario } from '../../../shared/scenario.ts';
import type { BankReport } from '../report.ts';
import { confirm } from './confirm.ts';
import { type Field, piecesOf, readFields } from './fields.ts';
import type { Block } from './head.ts';
import { standingAtEnd } from './kinds/sequence.ts';
import { plainItem, readStates } from './kinds/states.ts';
import { namedCircuit } from './names.ts';
import { readScenario, SCENARIO_KEYS } from './scenario-fields.ts';
import { askableIn } from './state-words.ts';
import type { TopicBlocks } from './topic-blocks.ts';

const KEYS = [...SCENARIO_KEYS, 'shows'];

export function readDrawingBlock(
  { head, content }: Block,
  blocks: TopicBlocks,
  report: BankReport,
): LessonPart | undefined {
  const fields = readFields(content, KEYS, 'drawing', report);
  const setting = head.settings.get('circuit')!;
  const circuit = namedCircuit(setting, blocks, report);
  const scenario = fields && circuit && readScenario(fields, circuit, report);
  if (!scenario) return undefined;
  const shows = fields.get('shows');
  if (shows) confirmShows(shows, circuit, scenario, blocks, report);
  return { kind: 'drawing', circuit: setting.value, scenario };
}

/** What a drawing shows is asked like the last step of a sequence. */
function confirmShows(
  shows: Field,
  circuit: Circuit,
  scenario: Scenario,
  blocks: TopicBlocks,
  report: BankReport,
): void {
  const after = scenario.acts.length;
  const readItem = plainItem(
    askableIn(circuit, ['lamp', 'load', 'relay', 'input']),
    'lampRelayOrInput',
    report,
  );
  const asked = piecesOf(shows).map((piece) => {
    const text = piece.text.split(/\s+/)[0]!;
    const item = readItem(text, { ...piece, text });
    return item && { ...item, key: `${after} ${item.item}` };
  });
  const items = asked.filter((item) => item !== undefined);
  const unique = items.filter(({ key }, index) => items.findIndex((other) => other.key === key) === index);
  if (items.length < asked.length || items.length === 0) return;
  const read = readStates(shows, unique, report);
  if (!read) return;
  confirm(
    {
      ...standingAtEnd(
        circuit,
        scenario,
        unique.map(({ item }) => item),
        read.states,
      ),
      answered: read.answered,
    },
    shows.position,
    blocks,
    report,
  );
}
