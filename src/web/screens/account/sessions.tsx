import { useEffect, useState } from 'preact/hooks';
import { call, type Gives } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Button } from '../../forms/button.tsx';
import { Failure } from '../../forms/failure.tsx';
import { dayAndTime } from '../../moments.ts';
import { Schedule } from '../../parts/schedule.tsx';
import { words } from '../../words.ts';

type Session = Gives<'sessions'>['sessions'][number];

function SessionSchedule({
  sessions,
  busy,
  onEnd,
}: {
  sessions: readonly Session[];
  busy: boolean;
  onEnd: (session: Session) => void;
}) {
  const w = words('account').sessions;
  const since = ({ begunAt }: Session): string => dayAndTime(begunAt);
  return (
    <Schedule
      class="roll folds"
      rows={sessions}
      keyOf={({ id }) => id}
      columns={[
        { title: w.device, head: true, cell: ({ device }) => device },
        { title: w.since, beside: true, cell: since },
        {
          title: w.lastUsed,
          beside: true,
          cell: ({ current, seenAt }) => (current ? w.hereNow : dayAndTime(seenAt)),
        },
        {
          title: w.endIt,
          away: true,
          cell: (session) =>
            !session.current && (
              <Button
                kind="plain"
                busy={busy}
                label={w.signOutOf({ device: session.device, since: since(session) })}
                onPress={() => onEnd(session)}
              >
                {w.signOut}
              </Button>
            ),
        },
      ]}
    />
  );
}

/** Where somebody is signed in, to end what shouldn't be. */
export function Sessions() {
  const w = words('account').sessions;
  const [sessions, setSessions] = useState<readonly Session[]>();
  const [said, setSaid] = useState('');
  const act = useAct();
  const fetchThem = async (): Promise<void> => setSessions((await call('sessions')).sessions);
  useEffect(() => {
    act.run(fetchThem);
    // Once, when it appears; `act` is another object each time.
  }, []);
  const others = sessions?.filter(({ current }) => !current) ?? [];
  const end = ({ id, device }: Session): void =>
    act.run(async () => {
      await call('endSession', { params: { session: id } });
      await fetchThem();
      setSaid(w.signedOut(device));
    });
  const endOthers = (): void =>
    act.run(async () => {
      const { ended } = await call('endOtherSessions');
      await fetchThem();
      setSaid(w.signedOutIn(ended));
    });
  return (
    <section>
      <h2>{w.title}</h2>
      {sessions ? (
        <SessionSchedule sessions={sessions} busy={act.busy} onEnd={end} />
      ) : (
        !act.failure && <p role="status">{w.fetching}</p>
      )}
      {others.length > 1 && (
        <p>
          <Button busy={act.busy} onPress={endOthers}>
            {w.others}
          </Button>
        </p>
      )}
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </section>
  );
}
