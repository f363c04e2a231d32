import type { DeviceTraits } from './traits.ts';

export const terminals: DeviceTraits<'terminals'> = {
  anatomy: ({ count }) => ({
    terminals: Array.from({ length: count }, (_, index) => String(index + 1)),
    mechanisms: [],
    contacts: [],
    loads: [],
  }),
  verbs: [],
};
