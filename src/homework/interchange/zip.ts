/** Files as one zip archive: the same bytes for the same files, wherever and whenever it is made. */
import { strToU8, zipSync } from 'fflate';

/** A zip's times are local and begin in 1980; a fixed one keeps the clock out of it. */
const NO_TIME = new Date(1980, 0, 2);

/** By path, with forward slashes. Files come in the order given. */
export const zipFiles = (files: Readonly<Record<string, string | Uint8Array>>): Uint8Array =>
  zipSync(
    Object.fromEntries(
      Object.entries(files).map(([path, content]) => [
        path,
        typeof content === 'string' ? strToU8(content) : content,
      ]),
    ),
    { level: 6, mtime: NO_TIME },
  );
