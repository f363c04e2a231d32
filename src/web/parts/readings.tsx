import type { ComponentChildren } from 'preact';
import type { Live } from '../engine/messages.ts';

/** How everything of a circuit stands, line by line. */
export const Readings = ({
  readings,
  live = false,
  children,
}: {
  readings: Live['readings'];
  /** Read out as it changes. */
  live?: boolean;
  /** Lines before them. */
  children?: ComponentChildren;
}) => (
  <ul class="readings" aria-live={live ? 'polite' : undefined}>
    {children}
    {readings.map(({ item, label, state }) => (
      <li key={item}>
        <strong>{item}</strong> <span>{label}</span> <em>{state}</em>
      </li>
    ))}
  </ul>
);
