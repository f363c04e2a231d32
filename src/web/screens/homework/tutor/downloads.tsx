import { useState } from 'preact/hooks';
import type { SetView } from '../../../../../shared/homework-views.ts';
import { call, save, wordsOf } from '../../../api.ts';
import { fileName } from './words.ts';

const FILES = [
  { route: 'papersPdf', label: 'Papers to print', rest: 'papers.pdf' },
  { route: 'keyPdf', label: 'Answers to all papers', rest: 'answers.pdf' },
  { route: 'marksCsv', label: 'Marks as a table (CSV)', rest: 'marks.csv' },
  { route: 'statements', label: 'Statements (xAPI)', rest: 'statements.json' },
  { route: 'package30', label: 'Sample as a package (QTI 3.0)', rest: 'qti-3.0.zip' },
  { route: 'package22', label: 'Sample as a package (QTI 2.2)', rest: 'qti-2.2.zip' },
] as const;

/** Files that take everybody's paper: those that are missing are drawn first. */
const OF_PAPERS: ReadonlySet<string> = new Set(['papersPdf', 'keyPdf']);

interface Drawn {
  readonly made: number;
  readonly of: number;
}

/** Has the papers drawn that aren't there yet, so that they can be printed as soon as the set is issued. */
async function drawAll(set: string, onDrawn: (drawn: Drawn) => void): Promise<void> {
  for (let before = -1; ; ) {
    const drawn = await call('prepareHomework', { params: { set } });
    if (drawn.made >= drawn.of) return;
    if (drawn.made === before) throw new Error('No more papers could be drawn just now. Try again.');
    before = drawn.made;
    onDrawn(drawn);
  }
}

/** Files to take away. A long one says that it is being made. */
export function Downloads({ view }: { view: SetView }) {
  const [making, setMaking] = useState('');
  const [drawn, setDrawn] = useState<Drawn>();
  const [failure, setFailure] = useState('');
  const { id, title } = view.set;
  const fetchFile = async ({ route, label, rest }: (typeof FILES)[number]): Promise<void> => {
    setMaking(label);
    setFailure('');
    await (OF_PAPERS.has(route) ? drawAll(id, setDrawn) : Promise.resolve())
      .then(() => setDrawn(undefined))
      .then(() => save(route, fileName(title, rest), { params: { set: id } }))
      .catch((error: unknown) => setFailure(`${label}: ${wordsOf(error)}`))
      .finally(() => {
        setMaking('');
        setDrawn(undefined);
      });
  };
  return (
    <section class="downloads">
      <h2>To take away</h2>
      <div class="row">
        {FILES.map((file) => (
          <button
            key={file.route}
            type="button"
            class="button plain"
            disabled={making !== ''}
            onClick={() => fetchFile(file)}
          >
            {file.label}
          </button>
        ))}
      </div>
      <p role="status">
        {making &&
          (drawn ? `${making}: drawing the papers, ${drawn.made} of ${drawn.of}…` : `${making}: being made…`)}
      </p>
      {making && (
        <progress
          aria-label={`${making} is being made`}
          {...(drawn ? { max: drawn.of, value: drawn.made } : {})}
        />
      )}
      {failure && (
        <p class="refused" role="alert">
          {failure}
        </p>
      )}
    </section>
  );
}
