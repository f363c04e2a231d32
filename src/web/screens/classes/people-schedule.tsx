import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { type Column, Schedule } from '../../parts/schedule.tsx';
import { words } from '../../words.ts';

interface Somebody {
  readonly id: string;
  readonly name: string;
  readonly signIn: string | null;
  readonly hasPassword: boolean;
}

/** Opens, under somebody's line in a schedule, what can be done for them. */
function LookAfter({
  of: { id, name },
  open,
  onOpen,
}: {
  of: Somebody;
  open: boolean;
  onOpen: (open: boolean) => void;
}) {
  const { common } = words('classes');
  return (
    <button
      type="button"
      class="button plain"
      aria-expanded={open}
      aria-controls={`with-${id}`}
      aria-label={open ? common.closeOf(name) : common.lookAfterOf(name)}
      onClick={() => onOpen(!open)}
    >
      {open ? common.close : common.lookAfter}
    </button>
  );
}

/** People, each in a line under which what can be done for them is opened. */
export function PeopleSchedule<P extends Somebody>({
  people,
  role,
  since,
  mayLookAfter = () => true,
  children,
}: {
  people: readonly P[];
  /** Where they have different ones. */
  role?: Column<P>;
  since: (person: P) => string;
  mayLookAfter?: (person: P) => boolean;
  children: (person: P) => ComponentChildren;
}) {
  const { common } = words('classes');
  const [open, setOpen] = useState<string>();
  return (
    <Schedule
      class="roll folds"
      rows={people}
      keyOf={({ id }) => id}
      columns={[
        { title: common.person, head: true, cell: ({ name }) => name },
        ...(role ? [role] : []),
        {
          title: common.signsIn,
          beside: true,
          cell: ({ hasPassword, signIn }) => (hasPassword ? signIn : common.byLink),
        },
        { title: common.since, beside: true, cell: since },
        {
          title: common.lookAfter,
          away: true,
          cell: (person) =>
            mayLookAfter(person) && (
              <LookAfter
                of={person}
                open={open === person.id}
                onOpen={(now) => setOpen(now ? person.id : undefined)}
              />
            ),
        },
      ]}
      under={(person) =>
        open === person.id ? { id: `with-${person.id}`, what: children(person) } : undefined
      }
    />
  );
}
