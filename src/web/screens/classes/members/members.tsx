import { useState } from 'preact/hooks';
import type { Member } from '../../../../../shared/people.ts';
import { me, roleOf } from '../../../me.ts';
import { dayOf } from '../../../parts/moment.ts';
import { set, words } from '../../../words.ts';
import { classAddress } from '../at.ts';
import { LookAfter } from '../look-after.tsx';
import type { PartProps } from '../part-props.ts';
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
  const { common } = words('classes');
  const { id, name, joinedAt, hasPassword, signIn } = member;
  return (
    <>
      <tr>
        <th scope="row">{name}</th>
        <td data-of={common.signsIn}>{hasPassword ? signIn : common.byLink}</td>
        <td data-of={common.since}>{dayOf(joinedAt)}</td>
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
  const { members: w, common } = words('classes');
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
        <h2>{w.learners(learners.length)}</h2>
        {learners.length === 0 ? (
          <p>
            {set(w.nobodyYet, {
              code: (text) => <a href={classAddress(detail.id, 'slips')}>{text}</a>,
              byName: (text) => <a href={classAddress(detail.id, 'add')}>{text}</a>,
            })}
          </p>
        ) : (
          <>
            {learners.length > 12 && (
              <p class="entry finds">
                <label for="find-member">{w.findName}</label>
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
              {wanted === '' ? '' : w.found({ shown: shown.length, count: learners.length })}
            </p>
            <table class="roll folds">
              <thead>
                <tr>
                  <th scope="col">{common.person}</th>
                  <th scope="col">{common.signsIn}</th>
                  <th scope="col">{common.since}</th>
                  <th scope="col">
                    <span class="away">{common.lookAfter}</span>
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
                {set(w.without(without), {
                  slips: (text) => <a href={classAddress(detail.id, 'roster')}>{text}</a>,
                })}
              </p>
            )}
          </>
        )}
      </section>
      <Tutors detail={detail} onDetail={onDetail} />
    </>
  );
}
