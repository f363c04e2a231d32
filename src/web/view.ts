import { computed, signal } from '@preact/signals';
import type { View } from './engine/messages.ts';
import { theme } from './theme.ts';

/** Under this width a drawing is laid out for a phone; the styles change there too. */
const narrow = matchMedia('(max-width: 719px)');
const width = signal<View['width']>(narrow.matches ? 'phone' : 'screen');
narrow.addEventListener('change', ({ matches }) => {
  width.value = matches ? 'phone' : 'screen';
});

/** How drawings are wanted on this screen now: it changes with the theme, and when a phone is turned. */
export const view = computed<View>(() => ({ width: width.value, theme: theme.value }));
