import { useEffect, useState } from 'preact/hooks';
import { call, type Gives } from '../../api.ts';
import { useAct } from '../../forms/act.ts';
import { Failure } from '../../forms/failure.tsx';
import { dayAndTime } from '../../parts/moment.ts';
import { words } from '../../words.ts';

type Session = Gives<'sessions'>['sessions'][number];

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
        <table class="roll folds">
          <thead>
            <tr>
              <th scope="col">{w.device}</th>
              <th scope="col">{w.since}</th>
              <th scope="col">{w.lastUsed}</th>
              <th scope="col">
                <span class="away">{w.endIt}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {sessions.map((session) => (
              <tr key={session.id}>
                <th scope="row">{session.device}</th>
                <td data-of={w.since}>{dayAndTime(session.begunAt)}</td>
                <td data-of={w.lastUsed}>{session.current ? w.hereNow : dayAndTime(session.seenAt)}</td>
                <td>
                  {!session.current && (
                    <button
                      type="button"
                      class="button plain"
                      disabled={act.busy}
                      aria-label={w.signOutOf({ device: session.device, since: dayAndTime(session.begunAt) })}
                      onClick={() => end(session)}
                    >
                      {w.signOut}
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : (
        !act.failure && <p role="status">{w.fetching}</p>
      )}
      {others.length > 1 && (
        <p>
          <button type="button" class="button" disabled={act.busy} onClick={endOthers}>
            {w.others}
          </button>
        </p>
      )}
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </section>
  );
}
