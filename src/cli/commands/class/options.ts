import type { CommandWords } from '../../../words/commands.ts';

export interface DataOption {
  readonly data?: string;
}
export interface AddressOption {
  readonly address: string;
}

type Flags = readonly [flags: string, told: string];

export const dataOption = ({ given, values }: CommandWords): Flags => [
  `--data <${values.folder}>`,
  given.options.dataOfServe,
];

export const addressOption = ({ given, values }: CommandWords): readonly [...Flags, standard: string] => [
  `--address <${values.url}>`,
  given.options.addressForLinks,
  'http://localhost:8024',
];
