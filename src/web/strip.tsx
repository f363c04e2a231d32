import type { ComponentChildren } from 'preact';
import type { Local } from './local/database.ts';
import { theme, turnTheme } from './theme.ts';
import { words } from './words.ts';

/** The strip along the top, like a drawing's title block: the name, what else there is, and light or dark. */
export function Strip({ device, children }: { device: Local; children?: ComponentChildren }) {
  const { frame } = words('first');
  return (
    <header class="strip">
      <p class="name">Polewise</p>
      {children}
      <button type="button" class="button plain theme" onClick={() => turnTheme(device)}>
        {theme.value === 'dark' ? frame.theme.light : frame.theme.dark}
      </button>
    </header>
  );
}
