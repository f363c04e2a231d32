import { useState } from 'preact/hooks';
import type { Member } from '../../../../../shared/people.ts';
import { me, roleOf } from '../../../me.ts';
import { dayOf } from '../../../moments.ts';
import { set, words } from '../../../words.ts';
import { classAddress } from '../classes-route.ts';
import { Find } from '../find.tsx';
import type { PartProps } from '../part-props.ts';
import { PeopleSchedule } from '../people-schedule.tsx';
import { Tutors } from './tutors.tsx';
import { WithMember } from './with-member.tsx';

/** With so many in sight nobody has to be looked for. */
const IN_SIGHT = 12;

/** Whoever may not be looked after by a tutor: other tutors and administrators are the administrator's. */
const mayLookAfter = ({ role }: Member): boolean => roleOf(me.value) === 'admin' || role === 'learner';

/** The learners, to be found by name where they are many. */
function Learners({ learners, ...props }: PartProps & { learners: readonly Member[] }) {
  const { members: w } = words('classes');
  const [find, setFind] = useState('');
  const wanted = find.trim().toLowerCase();
  const shown = learners.filter(
    ({ name, signIn }) => name.toLowerCase().includes(wanted) || (signIn ?? '').includes(wanted),
  );
  const without = learners.filter(({ hasPassword }) => !hasPassword).length;
  return (
    <>
      {learners.length > IN_SIGHT && (
        <Find long id="find-member" label={w.findName} value={find} onValue={setFind} />
      )}
      <p class="away" role="status">
        {wanted === '' ? '' : w.found({ shown: shown.length, count: learners.length })}
      </p>
      <PeopleSchedule people={shown} since={({ joinedAt }) => dayOf(joinedAt)} mayLookAfter={mayLookAfter}>
        {(member) => <WithMember member={member} {...props} />}
      </PeopleSchedule>
      {without > 0 && (
        <p>
          {set(w.without(without), {
            slips: (text) => <a href={classAddress(props.detail.id, 'roster')}>{text}</a>,
          })}
        </p>
      )}
    </>
  );
}

/** Everybody in a class, as a schedule. */
export function Members(props: PartProps) {
  const { members: w } = words('classes');
  const { id, members } = props.detail;
  const learners = members.filter(({ manner }) => manner === 'learner');
  return (
    <>
      <section>
        <h2>{w.learners(learners.length)}</h2>
        {learners.length === 0 ? (
          <p>
            {set(w.nobodyYet, {
              code: (text) => <a href={classAddress(id, 'slips')}>{text}</a>,
              byName: (text) => <a href={classAddress(id, 'add')}>{text}</a>,
            })}
          </p>
        ) : (
          <Learners learners={learners} {...props} />
        )}
      </section>
      <Tutors {...props} />
    </>
  );
}
