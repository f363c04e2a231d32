import type { Outbox } from '../../../local/homework/outbox.ts';
import { Schedule } from '../../../parts/schedule.tsx';
import { words } from '../../../words.ts';
import { addressOf } from '../homework-route.ts';
import { Head } from '../parts/head.tsx';
import { HandIn } from './hand-in.tsx';
import { Keeping } from './keeping.tsx';
import type { PaperSession } from './paper-session.ts';

function Items({ session }: { session: PaperSession }) {
  const { paper, common } = words('homework');
  const w = paper.overview;
  const answered = session.answered.value;
  return (
    <Schedule
      class="schedule"
      caption={w.items}
      rows={session.items}
      keyOf={({ asked }, item) => `${item} ${asked.title}`}
      like={(_, item) => answered[item]}
      columns={[
        { title: w.number, like: 'number', cell: (_, item) => item + 1 },
        {
          title: w.drawing,
          head: true,
          cell: ({ question, asked }, item) => (
            <a href={addressOf({ at: 'paper', paper: session.id, item: item + 1 })}>
              {question.circuit.title ?? asked.title}
            </a>
          ),
        },
        { title: w.asked, minor: true, cell: ({ asked }) => asked.title },
        {
          title: w.marks,
          like: 'number',
          cell: ({ marks }) => (
            <>
              <span class="unit">{common.marks(marks)}</span>
              <span class="bare">{marks}</span>
            </>
          ),
        },
        { title: w.answered, like: 'how', cell: (_, item) => w.answeredSo[answered[item] ?? 'none'] },
      ]}
    />
  );
}

/** Answers that came too late or were refused otherwise. */
function Refused({ session }: { session: PaperSession }) {
  const w = words('homework').paper.overview;
  const refused = session.refused.value;
  if (refused.length === 0) return null;
  return (
    <div class="refused" role="alert">
      <p>{w.refused}</p>
      <ul>
        {refused.map(({ item, message }) => (
          <li key={`${item} ${message}`}>{w.refusedItem({ number: item + 1, message })}</li>
        ))}
      </ul>
    </div>
  );
}

/** A paper as a whole: its items, what is answered, and handing it in. */
export function Overview({ session, outbox }: { session: PaperSession; outbox: Outbox }) {
  const { paper: w, common } = words('homework');
  const { paper, submittedAt } = session.view.value;
  const outOf = session.items.reduce((sum, { marks }) => sum + marks, 0);
  return (
    <div class="homework">
      <Head
        title={paper.title}
        cells={[
          submittedAt === null ? w.overview.closes(paper.closesAt) : common.handedIn(submittedAt),
          paper.attempt > 1 ? common.attempt(paper.attempt) : null,
          w.overview.count(session.items.length),
          common.marks(outOf),
        ]}
      />
      {session.open() && (
        <>
          <p class="first-words">{w.overview.firstWords}</p>
          <Keeping outbox={outbox} paper={session.id} closesAt={paper.closesAt} />
        </>
      )}
      <Refused session={session} />
      <Items session={session} />
      <HandIn session={session} outbox={outbox} />
      <p>
        <a href={addressOf({ at: 'mine' })}>{w.allMine}</a>
      </p>
    </div>
  );
}
