/**
 * Takes what a promise comes to, unless it isn't wanted any more by then: gives what says so, as an effect has it.
 *
 * `useEffect(() => asLongAsWanted(engine.call('draw', circuit), setDrawn), [circuit])`
 */
export function asLongAsWanted<T>(
  asked: Promise<T>,
  take: (value: T) => void,
  fail: (error: Error) => void = () => undefined,
): () => void {
  let wanted = true;
  asked.then(
    (value) => wanted && take(value),
    (error: Error) => wanted && fail(error),
  );
  return () => {
    wanted = false;
  };
}
