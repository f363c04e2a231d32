import { call } from '../../../api.ts';
import type { Ground } from '../../../start.ts';
import { Show, useFetched } from '../parts/fetched.tsx';
import { Head } from '../parts/head.tsx';
import { ShownItem } from '../parts/shown-item.tsx';
import { addressOf } from '../where.ts';

/** Another number gives another sample; after the last one comes the first. */
const MOST = 1000;

/** A paper as a learner would get one, with the right answers. */
export function Sample({ ground, set, number }: { ground: Ground; set: string; number: number }) {
  const { fetched, again } = useFetched(`${set} ${number}`, () =>
    call('sampleHomework', { params: { set }, query: { number } }),
  );
  return (
    <div class="homework wide">
      <Show of={fetched} again={again} waiting="Drawing a sample paper…">
        {({ title, items }) => (
          <>
            <Head
              title={title}
              cells={[
                `Sample paper ${number}`,
                `${items.length} items`,
                'with the right answers; nobody gets it',
              ]}
            />
            <p class="row">
              <a class="button" href={addressOf({ at: 'sample', set, number: (number % MOST) + 1 })}>
                Another sample
              </a>
              <a href={addressOf({ at: 'set', set })}>Back to the set</a>
            </p>
            {items.map(({ place, item, question, mark }) => (
              <ShownItem
                key={place}
                ground={ground}
                question={item.question}
                asked={question.asked}
                mark={mark}
                title={`${place}. ${item.question.circuit.title ?? question.asked.title}`}
              />
            ))}
          </>
        )}
      </Show>
    </div>
  );
}
