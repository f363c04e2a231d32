import type { View } from './engine/messages.ts';
import { theme } from './theme.ts';

/** Under this width a drawing is laid out for a phone. */
const PHONE_BELOW = 720;

/** How drawings are wanted on this screen now. */
export const currentView = (): View => ({
  width: innerWidth < PHONE_BELOW ? 'phone' : 'screen',
  theme: theme.peek(),
});
