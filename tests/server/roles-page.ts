/** docs/roles.md as it follows from the contract. */
import type { ApiRoute } from '../../shared/api.ts';
import { apiRoutes } from '../../shared/api.ts';
import { homeworkRoutes } from '../../shared/api-homework.ts';
import { peopleRoutes } from '../../shared/api-people.ts';

const ROLES = ['nobody', 'learner', 'tutor', 'admin'] as const;

const marks = ({ role }: ApiRoute): string =>
  ROLES.map((one) => (ROLES.indexOf(one) >= ROLES.indexOf(role) ? 'yes' : '–')).join(' | ');

const table = (routes: Readonly<Record<string, ApiRoute>>): string =>
  [
    '| route | nobody | learner | tutor | admin | what it does |',
    '| --- | --- | --- | --- | --- | --- |',
    ...Object.values(routes).map(
      (route) => `| \`${route.method} ${route.path}\` | ${marks(route)} | ${route.summary} |`,
    ),
  ].join('\n');

export const rolesPage = (): string => `# Who may do what

Written by \`npm run docs:roles\` from the contract in \`shared/\`; a test holds it equal, and another one asks every route
as every role and as nobody.

A role may do all that the roles before it may: **nobody** hasn't signed in, a **learner** practises and does homework, a
**tutor** looks after classes, an **admin** looks after everybody. Beyond the role:

- a learner has only what is their own;
- a tutor has only the classes of which they are tutor, the homework of those, and the learners in them; a tutor or an
  administrator who learns in such a class is looked after by administrators alone;
- an administrator has everything, but takes part in a class only as anybody does.

Who has not signed in gets \`sign-in-first\` (401), who has another role \`not-yours\` (403), before anything that was sent is
read. What belongs to others looks as if it weren't there: \`no-such-thing\` (404).

Without \`serve --class\` nobody signs in: the routes of practice are open to whoever sits at the machine, and those of
people, classes and homework aren't there.

## Practice, and the server itself

${table(apiRoutes)}

## People and classes

${table(peopleRoutes)}

## Homework

${table(homeworkRoutes)}
`;
