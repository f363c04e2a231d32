import { entryAddress } from '../../../server/index.ts';
import type { MadeLink } from '../../../store/index.ts';
import type { CommandWords } from '../../../words/commands.ts';
import { UsageError } from '../../io.ts';
import type { AddressOption } from './options.ts';

/** Where a link leads. */
export function linkText(
  { address }: AddressOption,
  { token }: MadeLink,
  { class: said }: CommandWords,
): string {
  if (!URL.canParse(address) || !/^https?:/.test(address))
    throw new UsageError(said.noAddress.wrong(address), said.noAddress.right);
  return entryAddress(address.replace(/\/+$/, ''), token);
}
