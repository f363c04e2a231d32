import type { RosterLine, RosterResult } from '../../../../../shared/api-people.ts';

const RESULTS: Readonly<Record<RosterLine['result'], string>> = {
  new: 'is new',
  joined: 'is known, comes into the class',
  already: 'is in the class',
};

/** How many come of it, in words. */
export function inShort(lines: readonly RosterLine[], kept: boolean): string {
  const count = (wanted: RosterLine['result']): number =>
    lines.filter(({ result }) => result === wanted).length;
  const [made, joined, already] = [count('new'), count('joined'), count('already')];
  return kept
    ? `Taken over: ${made} new, ${joined} known and now in the class, ${already} were in it.`
    : `It would bring ${made} new, ${joined} known into the class; ${already} are in it.`;
}

/** What would come of a roster, or has: line for line, or its mistakes. */
export function LookedAt({ result }: { result: RosterResult }) {
  if (result.result === 'mistakes')
    return (
      <>
        <p class="caution">
          Nothing was taken over. {result.problems.length === 1 ? 'This is' : 'These are'} to be put right in
          the file first:
        </p>
        <ul class="mistakes">
          {result.problems.map(({ file, line, message, hint }) => (
            <li key={`${file}:${line}:${message}`}>
              {[file, line === undefined ? undefined : `line ${line}`].filter(Boolean).join(', ')}
              {file !== undefined || line !== undefined ? ': ' : ''}
              {message} {hint}
            </li>
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
          <p>Passed over:</p>
          <ul class="mistakes">
            {passedOver.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </>
      )}
      {lines.length > 0 && (
        <div class="scrolls">
          <table class="roll">
            <thead>
              <tr>
                <th scope="col">Name</th>
                <th scope="col">As</th>
                <th scope="col">What comes of it</th>
              </tr>
            </thead>
            <tbody>
              {lines.map(({ name, manner, result: what }, at) => (
                <tr key={`${at}:${name}`}>
                  <th scope="row">{name}</th>
                  <td>{manner}</td>
                  <td>{RESULTS[what]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </div>
      )}
    </>
  );
}
