import { words } from '../../words.ts';

/** Opens, under somebody's line in a schedule, what can be done for them. */
export function LookAfter({
  id,
  name,
  open,
  onOpen,
}: {
  id: string;
  name: string;
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
