/** One figure of a benchmark. */
export interface Row {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  /** What the figure has to reach; whether that is a most or a least is said by `better`. */
  readonly bound?: number;
  readonly better?: 'less' | 'more';
  /** What was measured beside it in the same run, and how many times slower that is. */
  readonly peer?: string;
  readonly ratio?: number;
}

export const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
