import type { Me } from '../../../../shared/api-people.ts';
import { setMe } from '../../me.ts';

/** Opens the page for somebody who has just come in: from the beginning, so that nothing of anybody else is in it. */
export function goIn(now: Me, address = ''): void {
  setMe(now);
  // Whoever came to a certain place is brought there; a code or a link has done its work.
  if (address !== '' || /^#\/(enter|join)/.test(location.hash))
    history.replaceState(null, '', `${location.pathname}${address}`);
  location.reload();
}
