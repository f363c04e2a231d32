/** 1-based line and column (in UTF-16 code units) in a file. */
export interface Position {
  readonly line: number;
  readonly column: number;
}
