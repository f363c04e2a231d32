import { useId } from 'preact/hooks';

interface Props<T extends string> {
  readonly label: string;
  readonly options: readonly { readonly value: T; readonly text: string }[];
  readonly chosen: T;
  readonly onChoose: (value: T) => void;
}

/** One of a few ways, side by side, over or under a drawing: a row of radio buttons. */
export function SwitchRow<T extends string>({ label, options, chosen, onChoose }: Props<T>) {
  const name = useId();
  return (
    <fieldset class="switch-row" aria-label={label}>
      {options.map(({ value, text }) => (
        <label key={value}>
          <input
            type="radio"
            name={name}
            checked={value === chosen}
            onChange={() => onChoose(value)}
            class="away"
          />
          <span>{text}</span>
        </label>
      ))}
    </fieldset>
  );
}
