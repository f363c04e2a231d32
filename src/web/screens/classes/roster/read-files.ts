/** A roster out of the files that somebody has chosen: one table, or an export's files, also in a zip. */
import type { RosterIn } from '../../../../../shared/api-people.ts';
import { words } from '../../../words.ts';

/** Far above any class's roster, and well below what would make a phone stand still. */
const MOST_BYTES = 20 * 1024 * 1024;

/** Text of a file, whatever wrote it: UTF-8, else what spreadsheets on older systems write. */
export function textOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder('utf-16le').decode(bytes);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder('windows-1252').decode(bytes);
  }
}

const plainName = (path: string): string => path.slice(path.lastIndexOf('/') + 1).toLowerCase();

async function unpacked(bytes: Uint8Array): Promise<readonly (readonly [string, string])[]> {
  const { unzipSync } = await import('fflate');
  try {
    const files = unzipSync(bytes, {
      filter: ({ name, originalSize }) => /\.csv$/i.test(name) && originalSize <= MOST_BYTES,
    });
    return Object.entries(files).map(([path, inside]) => [plainName(path), textOf(inside)] as const);
  } catch {
    throw new Error(words('classes').roster.files.brokenZip);
  }
}

/**
 * The roster in the files.
 *
 * @throws Error with words for a person where there is none in them
 */
export async function rosterOf(files: readonly File[]): Promise<RosterIn> {
  const w = words('classes').roster.files;
  if (files.reduce((sum, { size }) => sum + size, 0) > MOST_BYTES) throw new Error(w.tooLarge);
  const texts = new Map<string, string>();
  for (const file of files) {
    const bytes = new Uint8Array(await file.arrayBuffer());
    const inside = /\.zip$/i.test(file.name)
      ? await unpacked(bytes)
      : [[plainName(file.name), textOf(bytes)] as const];
    for (const [name, text] of inside) texts.set(name, text);
  }
  if (texts.has('users.csv') || texts.has('enrollments.csv'))
    return { format: 'oneroster', files: Object.fromEntries(texts) };
  const [only, another] = [...texts.values()];
  if (only === undefined) throw new Error(w.noTable);
  if (another !== undefined) throw new Error(w.several);
  return { format: 'csv', text: only };
}
