import { entryAddress } from '../../../server/index.ts';
import type { MadeLink } from '../../../store/index.ts';
import { UsageError } from '../../io.ts';

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

/** Where a link leads. */
export function linkText({ address }: AddressOption, { token }: MadeLink): string {
  if (!URL.canParse(address) || !/^https?:/.test(address))
    throw new UsageError(`--address ${address} is no address.`, 'Such as https://practice.example');
  return entryAddress(address.replace(/\/+$/, ''), token);
}
