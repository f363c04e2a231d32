import { Readable } from 'node:stream';

/** The pieces as a stream. The first one is fetched here, so that a database that fails still gets a proper reply. */
export async function streamOf<T extends string | Uint8Array>(pieces: AsyncIterable<T>): Promise<Readable> {
  const source = pieces[Symbol.asyncIterator]();
  const first = await source.next();
  return Readable.from(
    (async function* () {
      try {
        if (!first.done) yield first.value;
        for (let next = await source.next(); !next.done; next = await source.next()) yield next.value;
      } finally {
        await source.return?.();
      }
    })(),
    { objectMode: false },
  );
}
