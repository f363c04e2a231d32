import { Readable } from 'node:stream';

/** The pieces as a stream. The first one is fetched here, so that a database that fails still gets a proper reply. */
export async function streamOf(pieces: AsyncIterable<string>): Promise<Readable> {
  const source = pieces[Symbol.asyncIterator]();
  const first = await source.next();
  return Readable.from(
    (async function* () {
      if (!first.done) yield first.value;
      for (let next = await source.next(); !next.done; next = await source.next()) yield next.value;
    })(),
  );
}
