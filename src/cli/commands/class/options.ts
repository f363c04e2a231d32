export interface DataOption {
  readonly data?: string;
}
export interface AddressOption {
  readonly address: string;
}

export const DATA_OPTION = ['--data <folder>', 'the data folder (default: the one that serve uses)'] as const;

export const ADDRESS_OPTION = [
  '--address <url>',
  'the address that people open, for links',
  'http://localhost:8024',
] as const;
