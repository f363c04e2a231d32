import type { RosterLine, RosterResult } from '../../../../../shared/api-people.ts';
import { Schedule } from '../../../parts/schedule.tsx';
import { words } from '../../../words.ts';

/** How many come of it, in words. */
export function inShort(lines: readonly RosterLine[], kept: boolean): string {
  const count = (wanted: RosterLine['result']): number =>
    lines.filter(({ result }) => result === wanted).length;
  const { taken, would } = words('classes').roster.looked;
  return (kept ? taken : would)({ made: count('new'), joined: count('joined'), already: count('already') });
}

/** What would come of a roster, or has: line for line, or its mistakes. */
export function LookedAt({ result }: { result: RosterResult }) {
  const w = words('classes').roster.looked;
  if (result.result === 'mistakes')
    return (
      <>
        <p class="caution">{w.mistakes(result.problems.length)}</p>
        <ul class="mistakes">
          {result.problems.map(({ file, line, message, hint }) => (
            <li key={`${file}:${line}:${message}`}>{w.mistake({ file, line, message, hint })}</li>
          ))}
        </ul>
      </>
    );
  const { lines, passedOver, kept } = result;
  return (
    <>
      <p>{inShort(lines, kept)}</p>
      {passedOver.length > 0 && (
        <>
          <p>{w.passedOver}</p>
          <ul class="mistakes">
            {passedOver.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
      {lines.length > 0 && (
        <div class="scrolls">
          <Schedule
            class="roll"
            rows={lines}
            keyOf={({ name }, at) => `${at}:${name}`}
            columns={[
              { title: w.name, head: true, cell: ({ name }) => name },
              { title: w.as, cell: ({ manner }) => w.manners[manner] },
              { title: w.comes, cell: ({ result: what }) => w.results[what] },
            ]}
          />
        </div>
      )}
    </>
  );
}
