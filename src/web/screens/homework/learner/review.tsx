import type { ItemMark } from '../../../../../shared/homework.ts';
import type { PaperReview } from '../../../../../shared/homework-views.ts';
import { call } from '../../../api.ts';
import type { Ground } from '../../../start.ts';
import { whenText } from '../moments.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { Head } from '../parts/head.tsx';
import { ItemBar } from '../parts/item-bar.tsx';
import { ItemTable } from '../parts/item-table.tsx';
import { earnedText, itemVerdict } from '../parts/item-verdict.tsx';
import { MarkedQuestion } from '../parts/marked-question.tsx';
import { SkillTable } from '../parts/skill-table.tsx';
import { addressOf } from '../where.ts';

function Ideas({ review }: { review: PaperReview }) {
  const { ideas } = review.report;
  if (ideas.length === 0) return null;
  return (
    <section>
      <h2>Ideas to be rid of</h2>
      <ul>
        {ideas.map(({ id, idea, advice, shownIn }) => (
          <li key={id}>
            {idea} {advice} (
            {shownIn.map(({ item }, at) => (
              <span key={item}>
                {at > 0 ? ', ' : ''}
                <a href={addressOf({ at: 'review', paper: review.id, item: item + 1 })}>item {item + 1}</a>
              </span>
            ))}
            )
          </li>
        ))}
      </ul>
    </section>
  );
}

function Revise({ review }: { review: PaperReview }) {
  const { revise } = review.report;
  return (
    <section>
      <h2>What to revise</h2>
      {revise.length === 0 ? (
        <p>Nothing stands out. Practice brings everything back in time.</p>
      ) : (
        <ul class="set-list">
          {revise.map(({ skill, title, topic, share }) => (
            <li key={skill}>
              {title} ({Math.round(100 * share)} % of the marks)
              <div class="row">
                <a class="onward" href={`#/practise/${skill}`}>
                  practise it
                </a>
                {topic && (
                  <a class="onward" href={`#/lessons/${topic.id}`}>
                    read {topic.title}
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
  const { total, skills } = review.report;
  return (
    <div class="homework">
      <Head
        title={review.title}
        cells={[
          `${total.earned} of ${total.outOf} marks`,
          `${Math.round(100 * total.share)} %`,
          `${total.answered} of ${total.items} answered`,
          review.submittedAt === null
            ? 'Not handed in; what was saved counts'
            : `Handed in ${whenText(review.submittedAt)}`,
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
        <a href={addressOf({ at: 'mine' })}>All my homework</a>
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
  mark: ItemMark;
}) {
  const item = review.paper.items[at]!;
  const last = review.paper.items.length - 1;
  const to = (next: number | null): string => addressOf({ at: 'review', paper: review.id, item: next });
  return (
    <MarkedQuestion
      ground={ground}
      question={item.question}
      mark={mark.mark}
      cells={[review.title, `Item ${at + 1} of ${last + 1}`, earnedText(mark)]}
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
