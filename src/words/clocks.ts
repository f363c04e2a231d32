/** What clocks do, where the reader is. */

/** Whether the clocks are put forward or back on that day: a time of it needs the name of the time. */
export function clocksChange(at: number): boolean {
  const date = new Date(at);
  const midnight = (days: number): Date =>
    new Date(date.getFullYear(), date.getMonth(), date.getDate() + days);
  return midnight(0).getTimezoneOffset() !== midnight(1).getTimezoneOffset();
}
