import { isPolyphase, type Run, type Survey } from '../parts/index.ts';

/**
 * How far each part of a run stands from the run's first line, in leg spacings. A run that goes on from a changeover's
 * break leg goes straight down from that leg, so what follows stands one spacing further left.
 */
export function laneShifts(drawn: Survey, run: Run): number[] {
  let line = 0;
  return run.parts.map(({ part, above, below }) => {
    const { spots, form } = drawn.parts[part] as Survey['parts'][number];
    const first = drawn.wiring.firstPort[part] as number;
    const dx = (port: number): number => (port < 0 ? 0 : (spots[port - first]?.dx ?? 0));
    // A motor's windings stand on lines of their own.
    if (isPolyphase(form)) return line;
    const centre = line - dx(above);
    line = centre + dx(below);
    return centre;
  });
}
