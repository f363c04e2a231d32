import type { ToldItemMark } from '../../../../../shared/homework.ts';
import type { PaperReview } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { SkillTitle } from '../../../parts/written.tsx';
import { MarkedQuestion } from '../../../question/marked-question.tsx';
import type { Ground } from '../../../start.ts';
import { set, words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import { Head } from '../parts/head.tsx';
import { ItemBar } from '../parts/item-bar.tsx';
import { ItemTable } from '../parts/item-table.tsx';
import { earnedText, itemVerdict } from '../parts/item-verdict.tsx';
import { SkillTable } from '../parts/skill-table.tsx';

function Ideas({ review }: { review: PaperReview }) {
  const w = words('homework').review;
  const { ideas } = review.report;
  if (ideas.length === 0) return null;
  return (
    <section>
      <h2>{w.ideas}</h2>
      <ul>
        {ideas.map(({ id, idea, advice, shownIn }) => (
          <li key={id}>
            {set(w.idea, {
              idea,
              advice,
              items: shownIn.map(({ item }, at) => (
                <span key={item}>
                  {at > 0 ? w.betweenItems : ''}
                  <a href={addressOf({ at: 'review', paper: review.id, item: item + 1 })}>
                    {w.item(item + 1)}
                  </a>
                </span>
              )),
            })}
          </li>
        ))}
      </ul>
    </section>
  );
}

function Revise({ review }: { review: PaperReview }) {
  const w = words('homework').review;
  const { revise } = review.report;
  return (
    <section>
      <h2>{w.revise}</h2>
      {revise.length === 0 ? (
        <p>{w.nothing}</p>
      ) : (
        <ul class="set-list">
          {revise.map(({ skill, title, topic, share }) => (
            <li key={skill}>
              {set(w.skill({ title: '{title}', part: share }), {
                title: <SkillTitle skill={skill} title={title} />,
              })}
              <div class="row">
                <a class="onward" href={`#/practise/${skill}`}>
                  {w.practiseIt}
                </a>
                {topic && (
                  <a class="onward" href={`#/lessons/${topic.id}`}>
                    {set(w.read('{title}'), { title: <SkillTitle skill={skill} title={topic.title} /> })}
                  </a>
                )}
              </div>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

function Summary({ review }: { review: PaperReview }) {
  const { review: w, common, paper } = words('homework');
  const { total, skills } = review.report;
  return (
    <div class="homework">
      <Head
        title={review.title}
        cells={[
          w.earned(total),
          words('first').parts.share(total.share),
          w.answered(total),
          review.submittedAt === null ? w.notHandedIn : common.handedIn(review.submittedAt),
        ]}
      />
      <ItemTable
        paper={review.paper}
        mark={review.mark}
        to={(item) => addressOf({ at: 'review', paper: review.id, item })}
      />
      <SkillTable skills={skills} />
      <Ideas review={review} />
      <Revise review={review} />
      <p>
        <a href={addressOf({ at: 'mine' })}>{paper.allMine}</a>
      </p>
    </div>
  );
}

function Item({
  ground,
  review,
  at,
  mark,
}: {
  ground: Ground;
  review: PaperReview;
  at: number;
  mark: ToldItemMark;
}) {
  const item = review.paper.items[at]!;
  const last = review.paper.items.length - 1;
  const to = (next: number | null): string => addressOf({ at: 'review', paper: review.id, item: next });
  return (
    <MarkedQuestion
      ground={ground}
      question={item.question}
      mark={mark.mark}
      cells={[
        review.title,
        words('homework').common.itemOf({ number: at + 1, count: last + 1 }),
        earnedText(mark),
      ]}
      verdict={itemVerdict(mark)}
      bar={<ItemBar at={at} last={last} to={to} />}
    />
  );
}

/** A learner's own marked paper: what it came to, and each item with what is right and why. */
export function Review({ ground, paper, item }: { ground: Ground; paper: string; item: number | null }) {
  const { fetched, again } = useFetched(paper, () => call('reviewPaper', { params: { paper } }));
  return (
    <Show of={fetched} again={again}>
      {(review) => {
        const mark = item === null ? undefined : review.mark.items[item - 1];
        return item !== null && mark ? (
          <Item ground={ground} review={review} at={item - 1} mark={mark} />
        ) : (
          <Summary review={review} />
        );
      }}
    </Show>
  );
}
