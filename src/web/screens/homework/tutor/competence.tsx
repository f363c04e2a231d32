import { useState } from 'preact/hooks';
import type { CompetenceView } from '../../../../../shared/homework-views.ts';
import type { ProofsWanted } from '../../../../../shared/issued.ts';
import { call, save } from '../../../api.ts';
import { useAct } from '../../../forms/act.ts';
import { Button } from '../../../forms/button.tsx';
import { dayOf } from '../../../moments.ts';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { Schedule } from '../../../parts/schedule.tsx';
import { skillWritten } from '../../../parts/written.tsx';
import { set, words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import { Grid } from '../parts/grid.tsx';
import { Head } from '../parts/head.tsx';
import type { Competence as Cell } from '../parts/types.ts';
import { namesOf } from './names.ts';
import { Refreshers } from './refreshers.tsx';
import { fileName } from './words.ts';

/** Days ahead that are shown first: what a tutor does something about. */
const SOON = 7;

function CellOf({ cell }: { cell: Cell }) {
  const w = words('sets').competence.cells;
  if (cell.kind === 'not-yet')
    return <td class="stands not-yet">{cell.begun ? w.begun : <span class="away">{w.notYet}</span>}</td>;
  return (
    <td class={`stands ${cell.kind}`}>
      {w[cell.kind]}
      <span class="of">{dayOf(cell.provenAt)}</span>
    </td>
  );
}

const wantedIn = (value: string): ProofsWanted => (value === 'supervised' ? value : 'any');

/** What one person has proven, to be printed. */
function Evidence({ person, name, proofs }: { person: string; name: string; proofs: ProofsWanted }) {
  const w = words('sets').competence;
  const { busy, failure, run } = useAct();
  return (
    <>
      <Button
        kind="plain"
        busy={busy}
        meanwhile={w.evidenceBusy}
        label={w.evidenceOf(name)}
        onPress={() =>
          run(() =>
            save('evidencePdf', fileName(name, w.evidenceFile), { params: { person }, query: { proofs } }),
          )
        }
      >
        {w.evidence}
      </Button>
      {failure && <span role="alert">{failure}</span>}
    </>
  );
}

function Matrix({ view }: { view: CompetenceView }) {
  const w = words('sets').competence;
  const nameOf = namesOf(view.people);
  const { skills, rows } = view.matrix;
  return (
    <Grid label={w.byPeople}>
      <Schedule
        class="schedule grid"
        caption={w.byPeopleOn(view.matrix.at)}
        rows={rows}
        keyOf={({ person }) => person}
        columns={[
          {
            title: w.person,
            head: true,
            cell: ({ person }) => (
              <>
                {nameOf(person)}
                <Evidence person={person} name={nameOf(person)} proofs={view.proofs} />
              </>
            ),
          },
          ...skills.map(({ id, title }, at) => ({
            title,
            written: skillWritten(id),
            onEnd: true,
            own: ({ cells }: { cells: readonly Cell[] }) => <CellOf cell={cells[at]!} />,
          })),
        ]}
      />
    </Grid>
  );
}

/** Who holds which skill, who is losing it, and whose refresher is due. */
export function Competence({ class: of }: { class: string }) {
  const { competence: w, common } = words('sets');
  const [days, setDays] = useState(SOON);
  const [proofs, setProofs] = useState<ProofsWanted>('any');
  const { fetched, again } = useFetched(`${of} ${days} ${proofs}`, () =>
    call('competence', { params: { class: of }, query: { days, proofs } }),
  );
  return (
    <div class="homework wide">
      <Head title={w.title} />
      <p>{set(w.means, { strong: (text) => <strong>{text}</strong> })}</p>
      <label class="field">
        {w.proofs}
        <select value={proofs} onChange={({ currentTarget }) => setProofs(wantedIn(currentTarget.value))}>
          <option value="any">{w.anyProof}</option>
          <option value="supervised">{w.supervisedOnly}</option>
        </select>
      </label>
      <Show of={fetched} again={again} waiting={common.reckoning}>
        {(view) => (
          <>
            <Matrix view={view} />
            <Refreshers view={view} days={days} onDays={setDays} />
            <p>
              <a href={addressOf({ at: 'sets', class: of })}>{common.setsOfClass}</a>
            </p>
          </>
        )}
      </Show>
    </div>
  );
}
