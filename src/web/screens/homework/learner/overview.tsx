import type { Outbox } from '../kept/outbox.ts';
import { whenText } from '../moments.ts';
import { Head } from '../parts/head.tsx';
import { addressOf } from '../where.ts';
import { HandIn } from './hand-in.tsx';
import { marksText } from './item-screen.tsx';
import { Keeping } from './keeping.tsx';
import type { PaperSession } from './paper-session.ts';

const WORDS = { all: 'answered', part: 'in part', none: 'not yet' } as const;

function Items({ session }: { session: PaperSession }) {
  const answered = session.answered.value;
  return (
    <table class="schedule">
      <caption>Items</caption>
      <thead>
        <tr>
          <th scope="col">No.</th>
          <th scope="col">Drawing</th>
          <th scope="col" class="minor">
            Asked
          </th>
          <th scope="col">Marks</th>
          <th scope="col">Answered</th>
        </tr>
      </thead>
      <tbody>
        {session.items.map(({ question, asked, marks }, item) => (
          <tr key={`${item} ${asked.title}`} class={answered[item]}>
            <td class="number">{item + 1}</td>
            <th scope="row">
              <a href={addressOf({ at: 'paper', paper: session.id, item: item + 1 })}>
                {question.circuit.title ?? asked.title}
              </a>
            </th>
            <td class="minor">{asked.title}</td>
            <td class="number">
              <span class="unit">{marksText(marks)}</span>
              <span class="bare">{marks}</span>
            </td>
            <td class="how">{WORDS[answered[item] ?? 'none']}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** Answers that came too late or were refused otherwise. */
function Refused({ session }: { session: PaperSession }) {
  const refused = session.refused.value;
  if (refused.length === 0) return null;
  return (
    <div class="refused" role="alert">
      <p>These answers did not count:</p>
      <ul>
        {refused.map(({ item, message }) => (
          <li key={`${item} ${message}`}>
            Item {item + 1}: {message}
          </li>
        ))}
      </ul>
    </div>
  );
}

/** A paper as a whole: its items, what is answered, and handing it in. */
export function Overview({ session, outbox }: { session: PaperSession; outbox: Outbox }) {
  const { paper, submittedAt } = session.view.value;
  const outOf = session.items.reduce((sum, { marks }) => sum + marks, 0);
  return (
    <div class="homework">
      <Head
        title={paper.title}
        cells={[
          submittedAt === null ? `Closes ${whenText(paper.closesAt)}` : `Handed in ${whenText(submittedAt)}`,
          paper.attempt > 1 ? `Attempt ${paper.attempt}` : null,
          `${session.items.length} items`,
          marksText(outOf),
        ]}
      />
      {session.open() && (
        <>
          <p class="first-words">
            Every answer is saved as you give it. Go through the items in any order; nothing is marked before
            you hand in. What is saved when the set closes counts, handed in or not.
          </p>
          <Keeping outbox={outbox} paper={session.id} closesAt={paper.closesAt} />
        </>
      )}
      <Refused session={session} />
      <Items session={session} />
      <HandIn session={session} outbox={outbox} />
      <p>
        <a href={addressOf({ at: 'mine' })}>All my homework</a>
      </p>
    </div>
  );
}
