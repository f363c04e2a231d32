/** Four mixed 32-bit lanes over the code units, as 32 hexadecimal digits; the mixing constants are MurmurHash3's. */
export function digestOf(text: string): string {
  // Whole numbers of 32 bits all the way: what overflows would be worked out as fractions, many times slower.
  const lanes = Int32Array.of(0x9e3779b9, 0x243f6a88, 0xb7e15162, 0x85ebca6b);
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index);
    for (let lane = 0; lane < 4; lane++) {
      const mixed = Math.imul(
        lanes[lane]! ^ (code + lane * 0x10001),
        lane % 2 === 0 ? 0xcc9e2d51 : 0x1b873593,
      );
      lanes[lane] = ((mixed << (13 + lane)) | (mixed >>> (19 - lane))) + (lanes[(lane + 1) % 4]! >>> 7);
    }
  }
  return Array.from(lanes, (lane) => {
    let h = lane ^ text.length;
    h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
    return ((h ^ (h >>> 16)) >>> 0).toString(16).padStart(8, '0');
  }).join('');
}
