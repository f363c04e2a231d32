/** Does what is left of work that can be done in steps. */
export function finish<T>(steps: Generator<undefined, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}
