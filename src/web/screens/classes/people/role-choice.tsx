import type { PersonRole } from '../../../../../shared/people.ts';
import { words } from '../../../words.ts';

const ROLES: readonly PersonRole[] = ['learner', 'tutor', 'admin'];

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
  const w = words('classes').people;
  return (
    <fieldset class="switch">
      <legend>{w.role}</legend>
      {ROLES.map((role) => (
        <label key={role} class="choice">
          <input type="radio" name={name} checked={role === value} onChange={() => onValue(role)} />
          {w.rolesMean[role]}
        </label>
      ))}
    </fieldset>
  );
}
