import { entryAddress } from '../../../server/index.ts';
import type { MadeLink } from '../../../store/index.ts';
import { UsageError } from '../../io.ts';
import type { AddressOption } from './options.ts';

/** Where a link leads. */
export function linkText({ address }: AddressOption, { token }: MadeLink): string {
  if (!URL.canParse(address) || !/^https?:/.test(address))
    throw new UsageError(`--address ${address} is no address.`, 'Such as https://practice.example');
  return entryAddress(address.replace(/\/+$/, ''), token);
}
