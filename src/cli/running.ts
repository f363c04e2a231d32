/** What a command leaves behind: its exit code. */
export interface Running {
  code: number;
}
