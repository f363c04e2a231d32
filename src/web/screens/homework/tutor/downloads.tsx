import { useState } from 'preact/hooks';
import type { SetView } from '../../../../../shared/homework-views.ts';
import { call, save, wordsOf } from '../../../api.ts';
import { Button } from '../../../forms/button.tsx';
import { Refused } from '../../../forms/failure.tsx';
import { words } from '../../../words.ts';
import { fileName } from './words.ts';

type File = keyof ReturnType<typeof words<'sets'>>['one']['downloads']['labels'];

/** Files that take everybody's paper: those that are missing are drawn first. */
const OF_PAPERS: ReadonlySet<File> = new Set<File>(['papersPdf', 'keyPdf']);

interface Drawn {
  readonly made: number;
  readonly of: number;
}

/** Has the papers drawn that aren't there yet, so that they can be printed as soon as the set is issued. */
async function drawAll(set: string, onDrawn: (drawn: Drawn) => void): Promise<void> {
  for (let before = -1; ; ) {
    const drawn = await call('prepareHomework', { params: { set } });
    if (drawn.made >= drawn.of) return;
    if (drawn.made === before) throw new Error(words('sets').one.downloads.stuck);
    before = drawn.made;
    onDrawn(drawn);
  }
}

/** Files to take away. A long one says that it is being made. */
export function Downloads({ view }: { view: SetView }) {
  const w = words('sets').one.downloads;
  const [making, setMaking] = useState<File>();
  const [drawn, setDrawn] = useState<Drawn>();
  const [failure, setFailure] = useState('');
  const { id, title } = view.set;
  const fetchFile = async (route: File): Promise<void> => {
    setMaking(route);
    setFailure('');
    await (OF_PAPERS.has(route) ? drawAll(id, setDrawn) : Promise.resolve())
      .then(() => setDrawn(undefined))
      .then(() => save(route, fileName(title, w.files[route]), { params: { set: id } }))
      .catch((error: unknown) => setFailure(w.failed({ file: w.labels[route], why: wordsOf(error) })))
      .finally(() => {
        setMaking(undefined);
        setDrawn(undefined);
      });
  };
  return (
    <section class="downloads">
      <h2>{w.title}</h2>
      <div class="row">
        {(Object.keys(w.labels) as File[]).map((file) => (
          <Button key={file} kind="plain" disabled={making !== undefined} onPress={() => fetchFile(file)}>
            {w.labels[file]}
          </Button>
        ))}
      </div>
      <p role="status">
        {making && (drawn ? w.drawing({ file: w.labels[making], ...drawn }) : w.making(w.labels[making]))}
      </p>
      {making && (
        <progress
          aria-label={w.progress(w.labels[making])}
          {...(drawn ? { max: drawn.of, value: drawn.made } : {})}
        />
      )}
      <Refused words={failure} />
    </section>
  );
}
