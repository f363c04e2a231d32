/** Where each part of a row of columns stands, and on which lines its terminals are. */
import {
  fellowsOf,
  footOfJoined,
  isLoad,
  isPolyphase,
  type Part,
  type Run,
  type Survey,
} from '../parts/index.ts';
import { laneShifts } from './lanes.ts';
import type { Levels, Links } from './levels.ts';
import type { Lane, PlacedPart } from './section-types.ts';

/** A motor's terminals stand on the lines of the columns that lead to them, where those are neighbours in order. */
function motorLanes(
  drawn: Survey,
  part: Part,
  column: number,
  shift: number,
  columns: readonly Run[],
  { row }: Levels,
): Lane[] {
  const first = drawn.wiring.firstPort[part.index] as number;
  const motorRow = row[part.index] as number;
  /** What leads to it stands above it, and the rest of its column below. */
  const makesWay = ({ parts, joined }: Run): boolean =>
    parts.every((item, at) =>
      at < joined ? (row[item.part] as number) < motorRow : (row[item.part] as number) > motorRow,
    );
  const over = (upper: boolean): boolean =>
    [0, 1, 2].every((offset) => {
      const run = columns[column + offset];
      const spot = part.spots.findIndex((s) => (s.side === 'top') === upper && s.dx === offset);
      if (!run || spot < 0) return false;
      const net = drawn.wiring.netOfPort[first + spot] as number;
      if (net < 0) return false;
      const only = run.parts.some((item) => item.part === part.index);
      return shift === 0 && (only ? offset === 0 : footOfJoined(run, drawn.wiring) === net && makesWay(run));
    });
  const spread = over(true);
  return part.spots.map(({ dx }) =>
    spread ? { column: column + dx, shift: 0, phase: 0 } : { column, shift, phase: dx },
  );
}

/**
 * One actuator moves all the contacts that the dashed line joins: it is drawn at the first. A head that holds itself is drawn
 * once: at a contact that stands apart the dashed line ends at where the head is, lest it be taken for a second one.
 */
function withActuator(drawn: Survey, part: Part, joined: readonly number[]): Part {
  const linked = joined[0] !== part.index;
  const head = fellowsOf(drawn, part)[0]?.index ?? part.index;
  if (!linked && (part.actuator !== 'mushroom' || joined.includes(head))) return part;
  const { actuator: _, ...rest } = part;
  const { actuator: __, ...traits } = part.traits;
  if (linked && part.actuator !== 'mushroom') return { ...rest, traits, look: `${part.look} linked` };
  const actuator = linked ? 'joined' : 'elsewhere';
  return { ...rest, actuator, traits: { ...traits, actuator }, look: `${part.look} ${actuator}` };
}

/** `narrow`: motors that keep their terminals in their own column. */
export function placeParts(
  drawn: Survey,
  columns: readonly Run[],
  levels: Levels,
  links: Links,
  narrow: ReadonlySet<number>,
): PlacedPart[] {
  const linkOf = new Map(links.flatMap((link) => link.map((part) => [part, link] as const)));
  return columns.flatMap((run, column) => {
    const shifts = laneShifts(drawn, run);
    return run.parts.map(({ part: index, flipped }, at): PlacedPart => {
      const part = drawn.parts[index] as Part;
      const shift = shifts[at] ?? 0;
      const joined = linkOf.get(index) ?? [index];
      const lanes = isPolyphase(part.form)
        ? motorLanes(drawn, part, column, shift, narrow.has(index) ? [] : columns, levels)
        : part.spots.map(({ dx }) => ({ column, shift: shift + dx, phase: 0 }));
      return {
        part: withActuator(drawn, part, joined),
        column,
        row: levels.row[index] as number,
        shift,
        flipped,
        lanes,
        lastOfRun: run.parts.slice(at + 1).every((later) => !isLoad(drawn.parts[later.part]?.form ?? 'make')),
        joined,
        linked: joined[0] !== index,
      };
    });
  });
}
