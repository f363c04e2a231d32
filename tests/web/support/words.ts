/** Everything that the page has to say, fetched: for tests of what it says without a browser. */
import { fetchWords } from '../../../src/web/words.ts';
import { PAGE_LANGUAGES, type PagePart } from '../../../src/words/pages.ts';

await fetchWords(...(Object.keys(PAGE_LANGUAGES['en']!) as PagePart[]));
