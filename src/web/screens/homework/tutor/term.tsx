import type { TermView } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { dayText } from '../moments.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { Head } from '../parts/head.tsx';
import { addressOf } from '../where.ts';
import { namesOf } from './names.ts';
import { SkillGrid } from './skill-grid.tsx';

function Grids({ term }: { term: TermView }) {
  const nameOf = namesOf(term.people);
  const { rows, skills, ideas } = term.report;
  return (
    <>
      <SkillGrid
        caption="From set to set"
        rows="Learner"
        columns={term.sets.map(({ id, title }) => ({ key: id, title }))}
        lines={rows.map(({ learner, bySet }) => ({ key: learner, name: nameOf(learner), shares: bySet }))}
      />
      <SkillGrid
        caption="Skills over all sets"
        rows="Learner"
        columns={skills.map(({ skill, title }) => ({ key: skill, title }))}
        lines={rows.map(({ learner, bySkill }) => ({ key: learner, name: nameOf(learner), shares: bySkill }))}
      />
      {ideas.length > 0 && (
        <section>
          <h2>Wrong ideas over all sets</h2>
          <ol class="set-list">
            {ideas.map(({ id, idea, times, learners }) => (
              <li key={id}>
                <strong>{idea}</strong>{' '}
                <span class="quiet">
                  {learners.length === 1 ? '1 learner' : `${learners.length} learners`},{' '}
                  {times === 1 ? '1 answer' : `${times} answers`}: {learners.map(nameOf).join(', ')}
                </span>
              </li>
            ))}
          </ol>
        </section>
      )}
    </>
  );
}

/** What all issued sets of a class say together. */
export function Term({ class: of }: { class: string }) {
  const { fetched, again } = useFetched(of, () => call('term', { params: { class: of } }));
  return (
    <div class="homework wide">
      <Show of={fetched} again={again} waiting="Reckoning…">
        {(term) => {
          const last = term.sets.at(-1);
          return (
            <>
              <Head
                title="All sets together"
                cells={[
                  term.sets.length === 1 ? '1 set' : `${term.sets.length} sets`,
                  last ? `the last closes ${dayText(last.closesAt)}` : null,
                ]}
              />
              {term.waiting > 0 && (
                <p role="status">
                  {term.waiting} {term.waiting === 1 ? 'paper' : 'papers'} still to be marked.{' '}
                  <button type="button" class="button plain" onClick={again}>
                    Look again
                  </button>
                </p>
              )}
              {term.sets.length === 0 ? <p>No set has been issued yet.</p> : <Grids term={term} />}
              <p>
                <a href={addressOf({ at: 'sets', class: of })}>Sets of the class</a>
              </p>
            </>
          );
        }}
      </Show>
    </div>
  );
}
