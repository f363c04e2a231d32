import { call } from '../../../api.ts';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import { ShownItem } from '../../../question/shown-item.tsx';
import type { Ground } from '../../../start.ts';
import { words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import { Head } from '../parts/head.tsx';

/** Another number gives another sample; after the last one comes the first. */
const MOST = 1000;

/** A paper as a learner would get one, with the right answers. */
export function Sample({ ground, set, number }: { ground: Ground; set: string; number: number }) {
  const { one, common } = words('sets');
  const w = one.sample;
  const { fetched, again } = useFetched(`${set} ${number}`, () =>
    call('sampleHomework', { params: { set }, query: { number } }),
  );
  return (
    <div class="homework wide">
      <Show of={fetched} again={again} waiting={w.drawing}>
        {({ title, items }) => (
          <>
            <Head title={title} cells={[w.title(number), one.items(items.length), w.nobodys]} />
            <p class="row">
              <a class="button" href={addressOf({ at: 'sample', set, number: (number % MOST) + 1 })}>
                {w.another}
              </a>
              <a href={addressOf({ at: 'set', set })}>{common.backToSet}</a>
            </p>
            {items.map(({ place, item, question, mark }) => (
              <ShownItem
                key={place}
                ground={ground}
                question={item.question}
                asked={question.asked}
                mark={mark}
                title={w.item({ place, title: item.question.circuit.title ?? question.asked.title })}
              />
            ))}
          </>
        )}
      </Show>
    </div>
  );
}
