/**
 * The OpenAPI 3.1 description of the HTTP interface, made from the contracts in shared/. What it says is documentation for whoever
 * writes programs, in English as docs/api.md, which repeats it: in no catalogue.
 */
import { z } from 'zod';
import {
  type ApiProblemCode,
  type ApiRoute,
  answerResult,
  apiProblem,
  commonProblems,
  type FileReply,
  keptAnswer,
  roleProblems,
} from '../../shared/api.ts';
import { bank, lessonSection, topic } from '../../shared/bank.ts';
import { circuit, device } from '../../shared/circuit.ts';
import { everyRoute } from '../../shared/every-route.ts';
import { attempt, recall } from '../../shared/memory.ts';
import { answerRecord } from '../../shared/practice.ts';
import { answer, mark, question } from '../../shared/question.ts';
import { act, fault, scenario } from '../../shared/scenario.ts';
import { settings } from '../../shared/settings.ts';
import { SESSION_COOKIE } from './people/cookie.ts';
import { API_PROBLEMS } from './problems.ts';

/** Schemas that have a name in the description; what contains them refers to it. */
const NAMED: Readonly<Record<string, z.ZodType>> = {
  Act: act,
  Answer: answer,
  AnswerRecord: answerRecord,
  AnswerResult: answerResult,
  Attempt: attempt,
  Bank: bank,
  Circuit: circuit,
  Device: device,
  Fault: fault,
  KeptAnswer: keptAnswer,
  LessonSection: lessonSection,
  Mark: mark,
  Problem: apiProblem,
  Question: question,
  Recall: recall,
  Scenario: scenario,
  Settings: settings,
  Topic: topic,
};

type Json = Readonly<Record<string, unknown>>;

const upper = (name: string): string => `${name[0]?.toUpperCase()}${name.slice(1)}`;
const bodyName = (name: string): string => `${upper(name)}Body`;
const replyName = (name: string): string => `${upper(name)}Reply`;
const reference = (name: string): Json => ({ $ref: `#/components/schemas/${name}` });
const jsonContent = (schema: Json): Json => ({ 'application/json': { schema } });

const isFile = (reply: ApiRoute['reply']): reply is FileReply => 'kind' in reply;

const routes = Object.entries(everyRoute) as readonly (readonly [name: string, route: ApiRoute])[];

/** What each schema is called: its own name where it has one, else after the first route that has it. */
function names(): ReadonlyMap<z.ZodType, string> {
  const found = new Map<z.ZodType, string>(Object.entries(NAMED).map(([name, schema]) => [schema, name]));
  const add = (schema: z.ZodType, name: string): void => {
    if (!found.has(schema)) found.set(schema, name);
  };
  for (const [name, { body, reply }] of routes) {
    if (body) add(body, bodyName(name));
    if (!isFile(reply)) add(reply, replyName(name));
  }
  return found;
}

const NAMES = names();
const nameOf = (schema: z.ZodType): string => NAMES.get(schema)!;

/** All schemas, each under its name; whatever is in one and has a name is a reference. */
function componentSchemas(): Readonly<Record<string, Json>> {
  const registry = z.registry<{ id: string }>();
  for (const [schema, id] of NAMES) registry.add(schema, { id });
  const { schemas } = z.toJSONSchema(registry, {
    uri: (id) => `#/components/schemas/${id}`,
    io: 'input',
    unrepresentable: 'any',
  });
  // Where a schema is known by its place, a name inside it would be read as another address.
  return Object.fromEntries(
    Object.entries(schemas).map(([id, { $id: _address, $schema: _dialect, ...schema }]) => [id, schema]),
  );
}

function parameters(query: z.ZodObject | undefined, place: 'query' | 'path'): readonly Json[] {
  if (!query) return [];
  const { properties = {}, required = [] } = z.toJSONSchema(query, { io: 'input' });
  return Object.entries(properties).map(([name, schema]) => ({
    name,
    in: place,
    required: required.includes(name),
    schema,
  }));
}

/** Refusals by status, each with the codes that it may have. */
function refusals(codes: readonly ApiProblemCode[]): Json {
  const byStatus = new Map<number, ApiProblemCode[]>();
  for (const code of codes) {
    const { status } = API_PROBLEMS[code];
    if (status !== null) byStatus.set(status, [...(byStatus.get(status) ?? []), code]);
  }
  return Object.fromEntries(
    [...byStatus].map(([status, found]) => [
      String(status),
      {
        description: found.map((code) => `${code}: ${API_PROBLEMS[code].meaning}`).join('\n'),
        content: jsonContent(reference('Problem')),
      },
    ]),
  );
}

const replyContent = (reply: ApiRoute['reply']): Json =>
  isFile(reply)
    ? Object.fromEntries(reply.types.map((type) => [type, {}]))
    : jsonContent(reference(nameOf(reply)));

function operation(name: string, route: ApiRoute): Json {
  const { summary, role, params, query, body, reply, problems } = route;
  const given = [...parameters(params, 'path'), ...parameters(query, 'query')];
  return {
    operationId: name,
    summary,
    ...(role === 'nobody'
      ? {}
      : { description: `For the role ${role} and above.`, security: [{ session: [] }] }),
    ...(given.length > 0 ? { parameters: given } : {}),
    ...(body ? { requestBody: { required: true, content: jsonContent(reference(nameOf(body))) } } : {}),
    responses: {
      '200': { description: 'Done.', content: replyContent(reply) },
      ...refusals([...new Set([...commonProblems, ...roleProblems[role], ...problems])]),
    },
  };
}

/** The description; `version` is the program's. */
export function openApi(version: string): Json {
  const paths: Record<string, Record<string, Json>> = {};
  for (const [name, route] of routes) {
    const path = route.path.replaceAll(/:(\w+)/g, '{$1}');
    paths[path] = { ...paths[path], [route.method.toLowerCase()]: operation(name, route) };
  }
  return {
    openapi: '3.1.0',
    info: {
      title: 'Polewise',
      version,
      summary: 'Practice in reading control circuits: answers, recall, question banks, classes and homework.',
      license: { name: 'MIT', identifier: 'MIT' },
    },
    jsonSchemaDialect: 'https://json-schema.org/draft/2020-12/schema',
    servers: [{ url: '/' }],
    paths,
    components: {
      schemas: componentSchemas(),
      securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: SESSION_COOKIE } },
    },
  };
}
