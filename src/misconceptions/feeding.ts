import type { Circuit } from '../../shared/circuit.ts';
import type { Act, Scenario } from '../../shared/scenario.ts';
import { circuitView } from '../circuit/index.ts';

/**
 * The supplies whose conductors come straight to a device, with nothing but wires and terminals between, on whatever
 * paths these are written: what its opening seems to switch off.
 */
export function suppliesAt(circuit: Circuit, device: string): readonly string[] {
  const beside = circuitView(circuit).conductors.groups.filter((group) =>
    group.some((terminal) => terminal.startsWith(`${device}:`)),
  );
  return circuit.supplies
    .map(({ name }) => name)
    .filter((supply) => beside.some((group) => group.some((terminal) => terminal.startsWith(`${supply}:`))));
}

/**
 * The scenario in which losing a supply, or opening a device beside one, also loses those supplies that `also` names;
 * what comes back brings them back. Undefined when nothing of that kind happens in it.
 *
 * @param also - given the supplies concerned by an act, those thought to go with them
 * @param ofSupplies - whether the loss of a whole supply counts as well
 */
export function losingAlso(
  scenario: Scenario,
  circuit: Circuit,
  also: (concerned: readonly string[]) => readonly string[],
  ofSupplies: boolean,
): Scenario | undefined {
  const concerned = (act: Act): readonly string[] => {
    if (act.kind === 'open' || act.kind === 'close') return suppliesAt(circuit, act.device);
    return ofSupplies && (act.kind === 'fail' || act.kind === 'restore') ? [act.supply] : [];
  };
  let changed = false;
  const with_ = (act: Act): readonly Act[] => {
    const supplies = concerned(act);
    const more = supplies.length === 0 ? [] : also(supplies);
    if (more.length === 0) return [act];
    changed = true;
    const lost = act.kind === 'open' || act.kind === 'fail';
    return [act, ...more.map((supply): Act => ({ kind: lost ? 'fail' : 'restore', supply }))];
  };
  const blown = scenario.faults.flatMap((fault): Act[] => {
    const supplies = fault.kind === 'blown' ? suppliesAt(circuit, fault.device) : [];
    return supplies.length === 0 ? [] : also(supplies).map((supply) => ({ kind: 'fail', supply }));
  });
  const acts = [...blown, ...scenario.acts.flatMap(with_)];
  return changed || blown.length > 0 ? { ...scenario, acts } : undefined;
}
