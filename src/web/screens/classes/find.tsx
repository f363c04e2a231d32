/** Where part of a name is typed, to find somebody by it. */
export const Find = ({
  id,
  label,
  value,
  onValue,
  long = false,
}: {
  id: string;
  label: string;
  value: string;
  onValue: (value: string) => void;
  /** In a long schedule, over it. */
  long?: boolean;
}) => (
  <p class={long ? 'entry finds' : 'entry'}>
    <label for={id}>{label}</label>
    <input
      id={id}
      type="search"
      autocomplete="off"
      value={value}
      onInput={({ currentTarget }) => onValue(currentTarget.value)}
    />
  </p>
);
