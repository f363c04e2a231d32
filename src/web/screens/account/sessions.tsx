import { useEffect, useState } from 'preact/hooks';
import { call, type Gives } from '../../api.ts';
import { useAct } from '../../parts/act.ts';
import { dayAndTime } from '../../parts/moment.ts';
import { Failure } from '../enter/sheet.tsx';

type Session = Gives<'sessions'>['sessions'][number];

/** Where somebody is signed in, to end what shouldn't be. */
export function Sessions() {
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
      setSaid(`Signed out: ${device}.`);
    });
  const endOthers = (): void =>
    act.run(async () => {
      const { ended } = await call('endOtherSessions');
      await fetchThem();
      setSaid(ended === 1 ? 'Signed out in 1 place.' : `Signed out in ${ended} places.`);
    });
  return (
    <section>
      <h2>Where you are signed in</h2>
      {sessions ? (
        <table class="roll folds">
          <thead>
            <tr>
              <th scope="col">Device</th>
              <th scope="col">Since</th>
              <th scope="col">Last used</th>
              <th scope="col">
                <span class="away">End it</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {sessions.map((session) => (
              <tr key={session.id}>
                <th scope="row">{session.device}</th>
                <td data-of="Since">{dayAndTime(session.begunAt)}</td>
                <td data-of="Last used">{session.current ? 'here, now' : dayAndTime(session.seenAt)}</td>
                <td>
                  {!session.current && (
                    <button
                      type="button"
                      class="button plain"
                      disabled={act.busy}
                      aria-label={`Sign out: ${session.device}, since ${dayAndTime(session.begunAt)}`}
                      onClick={() => end(session)}
                    >
                      Sign out
                    </button>
                  )}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : (
        !act.failure && <p role="status">Fetching…</p>
      )}
      {others.length > 1 && (
        <p>
          <button type="button" class="button" disabled={act.busy} onClick={endOthers}>
            Sign out everywhere else
          </button>
        </p>
      )}
      <p role="status">{said}</p>
      <Failure words={act.failure} />
    </section>
  );
}
