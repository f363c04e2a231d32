import { useState } from 'preact/hooks';

/** Puts a text where it can be pasted from. Where the browser doesn't allow it, says so: the text stands there to be marked. */
export function Copy({ text, what, label = 'Copy' }: { text: string; what: string; label?: string }) {
  const [said, setSaid] = useState('');
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(text);
      setSaid('Copied.');
    } catch {
      setSaid('This browser lets no page copy: mark the text and copy it.');
    }
  };
  return (
    <>
      <button type="button" class="button plain" aria-label={`${label}: ${what}`} onClick={copy}>
        {label}
      </button>
      <span role="status" class="said">
        {said}
      </span>
    </>
  );
}
