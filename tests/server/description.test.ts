/** The interface as it is described: in OpenAPI, in docs/api.md and in the contract, all three hold the same. */
import { readFileSync } from 'node:fs';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { z } from 'zod';
import { type ApiRoute, apiProblemCode, apiRoutes, commonProblems, roleProblems } from '../../shared/api.ts';
import { everyRoute } from '../../shared/every-route.ts';
import { API_PROBLEMS } from '../../src/server/problems.ts';
import { answerWith, MORNING } from '../support/answers.ts';
import { type Serving, serving } from './serving.ts';

let server: Serving;
beforeAll(async () => {
  server = await serving();
});
afterAll(() => server.end());

const page = readFileSync(new URL('../../docs/api.md', import.meta.url), 'utf8');
const routes: readonly ApiRoute[] = Object.values(everyRoute);
/** An address as OpenAPI writes it. */
const braced = (path: string): string => path.replaceAll(/:(\w+)/g, '{$1}');
const names = (list: readonly ApiRoute[]): readonly string[] =>
  list.map(({ method, path }) => `${method} ${path}`).sort();

interface Operation {
  readonly operationId: string;
  readonly requestBody?: object;
  readonly parameters?: readonly { name: string; required: boolean; schema: object }[];
  readonly responses: Readonly<Record<string, { description: string }>>;
}
interface Description {
  readonly openapi: string;
  readonly paths: Readonly<Record<string, Readonly<Record<string, Operation>>>>;
  readonly components: { readonly schemas: Readonly<Record<string, object>> };
}
const described = async (): Promise<Description> =>
  (await server.ask({ url: '/api/openapi.json' })).json() as Description;

describe('the OpenAPI description', () => {
  it('has every route of the contract and no other, and so has the server', async () => {
    const { openapi, paths } = await described();
    expect(openapi).toBe('3.1.0');
    const operations = Object.entries(paths).flatMap(([path, methods]) =>
      Object.keys(methods).map((method) => `${method.toUpperCase()} ${path}`),
    );
    expect(operations.sort()).toEqual(names(routes).map(braced).sort());
    for (const { method, path: url } of routes)
      expect([url, server.app.hasRoute({ method, url })]).toEqual([url, true]);
    // It prints a tree, in which each method stands once for each address that has it.
    const served = [...server.app.printRoutes().matchAll(/ \(([A-Z, ]+)\)/g)].flatMap(([, methods]) =>
      methods!.split(', ').filter((method) => method !== 'HEAD'),
    );
    expect(served).toHaveLength(routes.length);
  });

  it('refers only to what is in it, and has nothing that is referred to by nobody', async () => {
    const description = await described();
    const references = [...JSON.stringify(description).matchAll(/"\$ref":"([^"]*)"/g)].map(([, to]) => to!);
    const there = Object.keys(description.components.schemas).map((name) => `#/components/schemas/${name}`);
    expect([...new Set(references)].sort()).toEqual(there.sort());
  });

  it('has each way in which a route may refuse', async () => {
    const { paths } = await described();
    for (const { path, method, role, problems } of routes) {
      const { responses } = paths[braced(path)]![method.toLowerCase()]!;
      for (const code of [...commonProblems, ...roleProblems[role], ...problems]) {
        const { status } = API_PROBLEMS[code];
        if (status !== null) expect(responses[status]!.description).toContain(`${code}: `);
      }
    }
  });

  it('says whom a route is for, and what stands in its address', async () => {
    const { paths } = await described();
    const { put } = paths['/api/people/{person}/role']! as Record<string, object>;
    expect(put).toMatchObject({
      description: 'For the role admin and above.',
      security: [{ session: [] }],
      parameters: [{ name: 'person', in: 'path', required: true }],
    });
    const slips = paths['/api/classes/{class}/slips.pdf']!['get'] as Operation & {
      responses: Record<string, { content: object }>;
    };
    expect(slips.responses['200']!.content).toEqual({ 'application/pdf': {} });
  });

  it('says what a query and a body have to be', async () => {
    const { paths, components } = await described();
    const { get, post } = paths['/api/answers']!;
    expect(get!.parameters).toEqual([
      {
        name: 'after',
        in: 'query',
        required: false,
        schema: expect.objectContaining({ type: 'integer', default: 0 }),
      },
      { name: 'limit', in: 'query', required: false, schema: expect.objectContaining({ maximum: 100 }) },
    ]);
    expect(post!.requestBody).toMatchObject({
      required: true,
      content: { 'application/json': { schema: { $ref: '#/components/schemas/KeepAnswersBody' } } },
    });
    expect(components.schemas['AnswerRecord']).toMatchObject({
      type: 'object',
      additionalProperties: false,
      properties: { question: { $ref: '#/components/schemas/Question' } },
      required: expect.arrayContaining(['id', 'learner', 'at', 'mark']),
    });
  });

  it('reads back as schemas that take what the contract takes', async () => {
    const { components } = await described();
    const flat = { ...components.schemas['Settings'] } as Parameters<typeof z.fromJSONSchema>[0];
    const settings = z.fromJSONSchema(flat);
    expect(settings.safeParse({ changedAt: 5, minutesADay: 10 }).success).toBe(true);
    expect(settings.safeParse({ minutesADay: 0 }).success).toBe(false);
    expect(settings.safeParse({ bells: 1 }).success).toBe(false);
  });
});

describe('docs/api.md', () => {
  it('lists every route of practice with its summary, and no other', () => {
    const rows = [...page.matchAll(/^\| `([A-Z]+ \/api\/\S+)` \| (.*) \|$/gm)].map(([, name, text]) => [
      name,
      text,
    ]);
    expect(rows).toEqual(
      Object.values(apiRoutes).map(({ method, path, summary }) => [`${method} ${path}`, summary]),
    );
  });

  it('lists every code with its status and meaning, and no other', () => {
    const rows = [...page.matchAll(/^\| `([a-z-]+)` \| (\d+|in a result) \| (.*) \|$/gm)].map(
      ([, code, status, meaning]) => [code, status, meaning],
    );
    expect(rows).toEqual(
      Object.entries(API_PROBLEMS).map(([code, { status, meaning }]) => [
        code,
        status === null ? 'in a result' : String(status),
        meaning,
      ]),
    );
    expect(rows.map(([code]) => code).sort()).toEqual([...apiProblemCode.options].sort());
  });

  it('shows results and refusals as they come', async () => {
    const [answer] = [answerWith({ id: 'one', at: MORNING })];
    const results = await server.send([answer, answer, { ...answer, learner: 'somebody' }]);
    const shown = JSON.parse(/```json\n(\{\n {2}"results"[\s\S]*?)```/.exec(page)![1]!) as {
      results: object[];
    };
    const forms = (list: readonly object[]) => list.map((entry) => Object.keys(entry).sort());
    expect(forms(results)).toEqual(forms(shown.results));
  });
});
