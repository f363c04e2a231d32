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
  return (
    <button
      type="button"
      class="button plain"
      aria-expanded={open}
      aria-controls={`with-${id}`}
      aria-label={`${open ? 'Close' : 'Look after'} ${name}`}
      onClick={() => onOpen(!open)}
    >
      {open ? 'Close' : 'Look after'}
    </button>
  );
}
