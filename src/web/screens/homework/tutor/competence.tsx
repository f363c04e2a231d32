import { useState } from 'preact/hooks';
import type { CompetenceView } from '../../../../../shared/homework-views.ts';
import type { ProofsWanted } from '../../../../../shared/issued.ts';
import { call, save } from '../../../api.ts';
import { useAct } from '../../../parts/act.ts';
import { dayText } from '../moments.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { Head } from '../parts/head.tsx';
import type { Competence as Cell } from '../parts/types.ts';
import { addressOf } from '../where.ts';
import { namesOf } from './names.ts';
import { Refreshers } from './refreshers.tsx';
import { fileName } from './words.ts';

/** Days ahead that are shown first: what a tutor does something about. */
const SOON = 7;
const REACHABLE = { tabIndex: 0 } as const;

function CellOf({ cell }: { cell: Cell }) {
  if (cell.kind === 'not-yet')
    return <td class="stands not-yet">{cell.begun ? 'begun' : <span class="away">not yet</span>}</td>;
  return (
    <td class={`stands ${cell.kind}`}>
      {cell.kind}
      <span class="of">{dayText(cell.provenAt)}</span>
    </td>
  );
}

const wantedIn = (value: string): ProofsWanted => (value === 'supervised' ? value : 'any');

/** What one person has proven, to be printed. */
function Evidence({ person, name, proofs }: { person: string; name: string; proofs: ProofsWanted }) {
  const { busy, failure, run } = useAct();
  return (
    <>
      <button
        type="button"
        class="button plain"
        disabled={busy}
        onClick={() =>
          run(() =>
            save('evidencePdf', fileName(name, 'evidence.pdf'), { params: { person }, query: { proofs } }),
          )
        }
        aria-label={`Evidence of ${name}, PDF`}
      >
        {busy ? 'Being made…' : 'Evidence'}
      </button>
      {failure && <span role="alert">{failure}</span>}
    </>
  );
}

function Matrix({ view }: { view: CompetenceView }) {
  const nameOf = namesOf(view.people);
  const { skills, rows } = view.matrix;
  return (
    <section class="grid-scroll" aria-label="Skills by people" {...REACHABLE}>
      <table class="schedule grid">
        <caption>Skills by people, on {dayText(view.matrix.at)}</caption>
        <thead>
          <tr>
            <th scope="col">Person</th>
            {skills.map(({ id, title }) => (
              <th key={id} scope="col" class="on-end">
                <span>{title}</span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ person, cells }) => (
            <tr key={person}>
              <th scope="row">
                {nameOf(person)}
                <Evidence person={person} name={nameOf(person)} proofs={view.proofs} />
              </th>
              {cells.map((cell, at) => (
                <CellOf key={skills[at]?.id} cell={cell} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** Who holds which skill, who is losing it, and whose refresher is due. */
export function Competence({ class: of }: { class: string }) {
  const [days, setDays] = useState(SOON);
  const [proofs, setProofs] = useState<ProofsWanted>('any');
  const { fetched, again } = useFetched(`${of} ${days} ${proofs}`, () =>
    call('competence', { params: { class: of }, query: { days, proofs } }),
  );
  return (
    <div class="homework wide">
      <Head title="Who can do what" />
      <p>
        <strong>Held</strong>: proven on two different circuits and, by the memory model, not forgotten; with
        the day. <strong>Fading</strong>: proven, and a refresher is due. From homework, and from questions of
        practice that were issued to the learner; what else was practised proves nothing. It shows that
        somebody read drawings rightly on those days; it is no authorisation to work on a panel.
      </p>
      <label class="field">
        Proofs that count
        <select value={proofs} onChange={({ currentTarget }) => setProofs(wantedIn(currentTarget.value))}>
          <option value="any">Homework and issued practice</option>
          <option value="supervised">Only what was sat under supervision</option>
        </select>
      </label>
      <Show of={fetched} again={again} waiting="Reckoning…">
        {(view) => (
          <>
            <Matrix view={view} />
            <Refreshers view={view} days={days} onDays={setDays} />
            <p>
              <a href={addressOf({ at: 'sets', class: of })}>Sets of the class</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
