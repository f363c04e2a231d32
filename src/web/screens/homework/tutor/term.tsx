import type { TermView } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { Button } from '../../../forms/button.tsx';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { skillWritten } from '../../../parts/written.tsx';
import { words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import { Head } from '../parts/head.tsx';
import { namesOf } from './names.ts';
import { SkillGrid } from './skill-grid.tsx';

function Grids({ term }: { term: TermView }) {
  const { term: w, common } = words('sets');
  const nameOf = namesOf(term.people);
  const { rows, skills, ideas } = term.report;
  return (
    <>
      <SkillGrid
        caption={w.fromSetToSet}
        rows={common.learner}
        columns={term.sets.map(({ id, title }) => ({ key: id, title }))}
        lines={rows.map(({ learner, bySet }) => ({ key: learner, name: nameOf(learner), shares: bySet }))}
      />
      <SkillGrid
        caption={w.skills}
        rows={common.learner}
        columns={skills.map(({ skill, title }) => ({ key: skill, title, written: skillWritten(skill) }))}
        lines={rows.map(({ learner, bySkill }) => ({ key: learner, name: nameOf(learner), shares: bySkill }))}
      />
      {ideas.length > 0 && (
        <section>
          <h2>{w.ideas}</h2>
          <ol class="set-list">
            {ideas.map(({ id, idea, times, learners }) => (
              <li key={id}>
                <strong>{idea}</strong>{' '}
                <span class="quiet">{w.shownIn({ times, names: learners.map(nameOf) })}</span>
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
  const { term: w, common } = words('sets');
  const { fetched, again } = useFetched(of, () => call('term', { params: { class: of } }));
  return (
    <div class="homework wide">
      <Show of={fetched} again={again} waiting={common.reckoning}>
        {(term) => {
          const last = term.sets.at(-1);
          return (
            <>
              <Head
                title={w.title}
                cells={[w.sets(term.sets.length), last ? w.lastCloses(last.closesAt) : null]}
              />
              {term.waiting > 0 && (
                <p role="status">
                  {w.waiting(term.waiting)}{' '}
                  <Button kind="plain" onPress={again}>
                    {common.lookAgain}
                  </Button>
                </p>
              )}
              {term.sets.length === 0 ? <p>{w.none}</p> : <Grids term={term} />}
              <p>
                <a href={addressOf({ at: 'sets', class: of })}>{common.setsOfClass}</a>
              </p>
            </>
          );
        }}
      </Show>
    </div>
  );
}
