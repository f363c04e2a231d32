import { computed, signal } from '@preact/signals';
import type { Theme } from '../drawing/index.ts';
import type { Local } from './local/database.ts';

const dark = matchMedia('(prefers-color-scheme: dark)');
const system = signal<Theme>(dark.matches ? 'dark' : 'light');
dark.addEventListener('change', ({ matches }) => {
  system.value = matches ? 'dark' : 'light';
});

/** What the learner chose; undefined follows the device. */
const chosen = signal<Theme | undefined>(undefined);
export const theme = computed<Theme>(() => chosen.value ?? system.value);

export async function loadTheme(local: Local): Promise<void> {
  chosen.value = await local.value('theme');
  if (chosen.value) document.documentElement.dataset['theme'] = chosen.value;
}

/** Changes between light and dark, and keeps the choice. */
export async function turnTheme(local: Local): Promise<void> {
  const next = theme.value === 'dark' ? 'light' : 'dark';
  chosen.value = next;
  document.documentElement.dataset['theme'] = next;
  await local.setValue('theme', next);
}
