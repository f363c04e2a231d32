import { useEffect } from 'preact/hooks';
import { call } from '../../../api.ts';
import { guardAgain } from '../../../guard.ts';
import type { Outbox } from '../../../local/homework/outbox.ts';
import { fromServerOrDevice } from '../../../local/homework/server-or-device.ts';
import { Show, useFetched } from '../../../parts/fetched.tsx';
import type { Ground } from '../../../start.ts';
import { words } from '../../../words.ts';
import { ItemScreen } from './item-screen.tsx';
import { useNow } from './keeping.tsx';
import { Overview } from './overview.tsx';
import { PaperSession } from './paper-session.ts';

/** Milliseconds. */
const FOR_WHAT_WAITS = 4_000;

/** From the server; without network as it is kept on this device. */
async function openPaper(outbox: Outbox, id: string): Promise<PaperSession> {
  const { kept, person } = outbox;
  // First what waits: else the server would tell of the time before it. A network that hangs doesn't keep the paper shut.
  if ((await kept.waitingOf(person)).length > 0)
    await Promise.race([outbox.flush(), new Promise((resolve) => setTimeout(resolve, FOR_WHAT_WAITS))]);
  const { from, value } = await fromServerOrDevice(
    (signal) => call('paper', { params: { paper: id }, ...(signal ? { signal } : {}) }),
    kept.paper(person, id),
  );
  if (from === 'server') {
    outbox.hear(value.now);
    guardAgain();
    await kept.keepPaper(person, value);
  }
  return PaperSession.open(outbox, value);
}

function Working({
  ground,
  outbox,
  session,
  item,
}: {
  ground: Ground;
  outbox: Outbox;
  session: PaperSession;
  item: number | null;
}) {
  // At closing time the screen changes by itself.
  const now = useNow(outbox);
  const rounds = outbox.rounds.value;
  const { closesAt } = session.view.value.paper;
  const over = now >= closesAt;
  useEffect(() => {
    const look = async (): Promise<void> => {
      await session.lookForRefused();
      // Something is no longer taken, and the page didn't know yet: the server says how the paper stands.
      if (session.refused.value.length > 0 && session.open())
        session.renew(await call('paper', { params: { paper: session.id } }));
    };
    look().catch(() => undefined);
  }, [session, rounds]);
  useEffect(() => {
    if (over) outbox.flush().catch(() => undefined);
  }, [outbox, over]);
  return item !== null && session.items[item - 1] ? (
    <ItemScreen key={session.id} ground={ground} outbox={outbox} session={session} at={item - 1} />
  ) : (
    <Overview session={session} outbox={outbox} />
  );
}

/** A paper that is worked on. It stays open while one goes from item to item. */
export function PaperScreen({
  ground,
  outbox,
  paper,
  item,
}: {
  ground: Ground;
  outbox: Outbox;
  paper: string;
  item: number | null;
}) {
  const { fetched, again } = useFetched(`${outbox.person} ${paper}`, () => openPaper(outbox, paper));
  return (
    <Show of={fetched} again={again} waiting={words('homework').paper.fetching}>
      {(session) => <Working ground={ground} outbox={outbox} session={session} item={item} />}
    </Show>
  );
}
