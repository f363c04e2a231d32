import type { PersonRole } from '../../../../../shared/people.ts';

const CHOICES: readonly (readonly [PersonRole, string])[] = [
  ['learner', 'Learner: practises and does homework'],
  ['tutor', 'Tutor: has classes of their own'],
  ['admin', 'Administrator: sees all classes and people'],
];

/** What somebody may do. */
export function RoleChoice({
  name,
  value,
  onValue,
}: {
  name: string;
  value: PersonRole;
  onValue: (role: PersonRole) => void;
}) {
  return (
    <fieldset class="switch">
      <legend>Role</legend>
      {CHOICES.map(([role, words]) => (
        <label key={role} class="choice">
          <input type="radio" name={name} checked={role === value} onChange={() => onValue(role)} />
          {words}
        </label>
      ))}
    </fieldset>
  );
}
