/** Where the horizontal of a conductor begins and ends, and which end carries its mark. */
import type { Survey } from '../parts/index.ts';
import type { Occupied } from './occupied.ts';
import { type Cluster, type Lane, laneKey, type Trunk } from './section-types.ts';

const byPlace = (a: Lane, b: Lane): number => laneKey(a) - laneKey(b);

/** Where another line of the end's own column stands in the way of a mark, the mark goes to the other end, or past it. */
export function clearOfLines(trunk: Trunk, taken: Occupied): Trunk {
  if (!trunk.before && !trunk.after) return trunk;
  const { channel } = trunk;
  const past = (cluster: Cluster | undefined, sign: 1 | -1): Lane | undefined => {
    if (!cluster || cluster.riser) return undefined;
    const lines = taken.linesIn(cluster.lane.column, channel).sort((a, b) => sign * byPlace(b, a));
    const [outermost] = lines;
    return outermost && laneKey(outermost) !== laneKey(cluster.lane) ? outermost : undefined;
  };
  const leftmost = past(leftEnd(trunk), -1);
  const rightmost = past(rightEnd(trunk), 1);
  if (!trunk.supply) {
    if (trunk.after && !trunk.before && rightmost && !leftmost)
      return { ...trunk, before: trunk.after, after: '' };
    if (trunk.before && !trunk.after && leftmost && !rightmost)
      return { ...trunk, before: '', after: trunk.before };
  }
  return {
    ...trunk,
    ...(trunk.before && leftmost ? { leftmost } : {}),
    ...(trunk.after && rightmost ? { rightmost } : {}),
  };
}

/** Lines come in this order from left to right; a riser stands right of its column. */
const placeOf = ({ lane, riser }: Cluster): number =>
  lane.column * 1000 + (riser ? 500 : lane.shift + lane.phase * 20);

const extreme = ({ clusters }: Trunk, sign: number): Cluster | undefined =>
  clusters.reduce<Cluster | undefined>(
    (best, cluster) => (!best || sign * (placeOf(cluster) - placeOf(best)) > 0 ? cluster : best),
    undefined,
  );

/** The cluster that a conductor's trunk begins, and ends, at. */
export const leftEnd = (trunk: Trunk): Cluster | undefined => extreme(trunk, -1);
export const rightEnd = (trunk: Trunk): Cluster | undefined => extreme(trunk, 1);

/** The phases of one supply begin at its leftmost column, L1 above L2 above L3. */
export function phasesTogether(drawn: Survey, trunks: readonly Trunk[], taken: Occupied): Trunk[] {
  const phases = drawn.circuit.supplies
    .filter(({ current }) => current === '3AC')
    .flatMap(({ name }) =>
      ['L1', 'L2', 'L3'].map((pole, index) => ({ name, rail: `${name}:${pole}`, index })),
    );
  if (phases.length === 0) return [...trunks];
  const phaseOf = (net: number) => phases.find(({ rail }) => drawn.wiring.nets[net]?.rails.includes(rail));
  const leads = new Map<string, Lane>();
  for (const { net, clusters } of trunks) {
    const phase = phaseOf(net);
    for (const { lane, riser } of phase ? clusters : []) {
      const lead = leads.get(phase?.name ?? '');
      if (!riser && (!lead || laneKey(lane) < laneKey(lead))) leads.set(phase?.name ?? '', lane);
    }
  }
  return trunks.map((trunk) => {
    const phase = phaseOf(trunk.net);
    const lead = phase && leads.get(phase.name);
    if (!lead) return trunk;
    // Its mark keeps clear of whatever else comes up to this height in that column.
    const lines = [lead, ...taken.linesIn(lead.column, trunk.channel)].sort(byPlace);
    return { ...trunk, lead: lines[0] as Lane, phase: phase.index };
  });
}
