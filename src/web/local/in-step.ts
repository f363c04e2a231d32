/**
 * Does something now, whenever the network is back, and whenever the page is looked at again.
 *
 * @param whenLeft - also when it is left: it may be for the last time
 */
export function inStep(go: () => unknown, whenLeft = false): void {
  addEventListener('online', go);
  document.addEventListener('visibilitychange', () => {
    if (whenLeft || document.visibilityState === 'visible') go();
  });
  go();
}
