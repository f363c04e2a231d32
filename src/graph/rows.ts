/** Lists of numbers one after another in one array: list `i` is `list[start[i]]` up to `list[start[i + 1] - 1]`. */
export interface Rows {
  readonly start: Int32Array;
  readonly list: Int32Array;
}

/** One of the lists. */
export const rowOf = ({ start, list }: Rows, row: number): Int32Array =>
  list.subarray(start[row]!, start[row + 1]!);

export function rowsOf(lists: readonly (readonly number[])[]): Rows {
  const start = new Int32Array(lists.length + 1);
  for (let row = 0; row < lists.length; row++) start[row + 1] = start[row]! + lists[row]!.length;
  const list = new Int32Array(start[lists.length]!);
  for (let row = 0; row < lists.length; row++) list.set(lists[row]!, start[row]);
  return { start, list };
}

/** The lists the other way round: of each number below `size` the rows that it stands in, ascending. */
export function turned({ start, list }: Rows, size: number): Rows {
  const from = new Int32Array(size + 1);
  for (const item of list) from[item + 1] = from[item + 1]! + 1;
  for (let item = 0; item < size; item++) from[item + 1] = from[item + 1]! + from[item]!;
  const next = from.slice();
  const rows = new Int32Array(list.length);
  for (let row = 0; row + 1 < start.length; row++) {
    for (let index = start[row]!; index < start[row + 1]!; index++) {
      const item = list[index]!;
      rows[next[item]!] = row;
      next[item] = next[item]! + 1;
    }
  }
  return { start: from, list: rows };
}
