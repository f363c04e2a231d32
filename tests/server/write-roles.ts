/** Writes docs/roles.md: `npm run docs:roles`. */
import { writeFileSync } from 'node:fs';
import { rolesPage } from './roles-page.ts';

writeFileSync(new URL('../../docs/roles.md', import.meta.url), rolesPage());
