import { useState } from 'preact/hooks';
import type { Member } from '../../../../../shared/people.ts';
import { me, roleOf } from '../../../me.ts';
import { dayOf } from '../../../parts/moment.ts';
import { classAddress } from '../at.ts';
import type { PartProps } from '../class.tsx';
import { LookAfter } from '../look-after.tsx';
import { Tutors } from './tutors.tsx';
import { WithMember } from './with-member.tsx';

/** Whoever may not be looked after by a tutor: other tutors and administrators are the administrator's. */
const mayLookAfter = ({ role }: Member): boolean => roleOf(me.value) === 'admin' || role === 'learner';

function Line({
  member,
  open,
  onOpen,
  ...props
}: PartProps & { member: Member; open: boolean; onOpen: (open: boolean) => void }) {
  const { id, name, joinedAt, hasPassword, signIn } = member;
  return (
    <>
      <tr>
        <th scope="row">{name}</th>
        <td data-of="Signs in">{hasPassword ? signIn : 'by link, no password yet'}</td>
        <td data-of="Since">{dayOf(joinedAt)}</td>
        <td>{mayLookAfter(member) && <LookAfter id={id} name={name} open={open} onOpen={onOpen} />}</td>
      </tr>
      {open && (
        <tr id={`with-${id}`} class="opened">
          <td colSpan={4}>
            <WithMember member={member} {...props} />
          </td>
        </tr>
      )}
    </>
  );
}

/** Everybody in a class, as a schedule. */
export function Members({ detail, onDetail }: PartProps) {
  const [open, setOpen] = useState<string>();
  const [find, setFind] = useState('');
  const learners = detail.members.filter(({ manner }) => manner === 'learner');
  const wanted = find.trim().toLowerCase();
  const shown = learners.filter(
    ({ name, signIn }) => name.toLowerCase().includes(wanted) || (signIn ?? '').includes(wanted),
  );
  const without = learners.filter(({ hasPassword }) => !hasPassword).length;
  return (
    <>
      <section>
        <h2>{learners.length === 1 ? '1 learner' : `${learners.length} learners`}</h2>
        {learners.length === 0 ? (
          <p>
            Nobody yet. <a href={classAddress(detail.id, 'slips')}>Hand out the joining code</a>, or{' '}
            <a href={classAddress(detail.id, 'add')}>add learners by name</a>.
          </p>
        ) : (
          <>
            {learners.length > 12 && (
              <p class="entry finds">
                <label for="find-member">Find a name</label>
                <input
                  id="find-member"
                  type="search"
                  autocomplete="off"
                  value={find}
                  onInput={({ currentTarget }) => setFind(currentTarget.value)}
                />
              </p>
            )}
            <p class="away" role="status">
              {wanted === '' ? '' : `${shown.length} of ${learners.length}`}
            </p>
            <table class="roll folds">
              <thead>
                <tr>
                  <th scope="col">Name</th>
                  <th scope="col">Signs in</th>
                  <th scope="col">Since</th>
                  <th scope="col">
                    <span class="away">Look after</span>
                  </th>
                </tr>
              </thead>
              <tbody>
                {shown.map((member) => (
                  <Line
                    key={member.id}
                    member={member}
                    detail={detail}
                    onDetail={onDetail}
                    open={open === member.id}
                    onOpen={(now) => setOpen(now ? member.id : undefined)}
                  />
                ))}
              </tbody>
            </table>
            {without > 0 && (
              <p>
                {without === 1 ? '1 has' : `${without} have`} no password yet, and need a link for any other
                device: <a href={classAddress(detail.id, 'roster')}>print slips with links for them</a>.
              </p>
            )}
          </>
        )}
      </section>
      <Tutors detail={detail} onDetail={onDetail} />
    </>
  );
}
