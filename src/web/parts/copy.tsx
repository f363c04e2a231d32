import { useState } from 'preact/hooks';
import { words } from '../words.ts';

/** Puts a text where it can be pasted from. Where the browser doesn't allow it, says so: the text stands there to be marked. */
export function Copy({
  text,
  what,
  label = words('first').parts.copy.copy,
}: {
  text: string;
  what: string;
  label?: string;
}) {
  const { copy: told } = words('first').parts;
  const [said, setSaid] = useState('');
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid(told.copied);
    } catch {
      setSaid(told.refused);
    }
  };
  return (
    <>
      <button type="button" class="button plain" aria-label={told.copyOf({ label, what })} onClick={copy}>
        {label}
      </button>
      <span role="status" class="said">
        {said}
      </span>
    </>
  );
}
