/**
 * QTI packages against the published structure. The schemas can't be had here, so nothing is validated against them: the
 * XML is read by libxml2, held to the information model (tests/homework/qti/content-models.ts, from memory), and what a
 * delivery system would give is worked out by a reader of its own and compared with the mark given here.
 */

import fc from 'fast-check';
import { unzipSync } from 'fflate';
import { describe, expect, it } from 'vitest';
import type { Answer, Question } from '../../shared/question.ts';
import { paperFor, type QtiVersion, qtiFiles, qtiPackage } from '../../src/homework/index.ts';
import { rightAnswer } from '../../src/questions/index.ts';
import { english } from '../../src/words/en/core.ts';
import { course, places, seats, setOf } from '../homework/course.ts';
import { faultsIn, inOldNames } from '../homework/qti/check-structure.ts';
import { MANIFEST_MODELS, MODELS } from '../homework/qti/content-models.ts';
import { type Responses, scoreOf } from '../homework/qti/score.ts';
import { only, readXml, type Tree, walk } from '../homework/qti/tree.ts';
import { askQuestion, markAnswer } from '../support/in-english.ts';

const HTML: ReadonlySet<string> = new Set(['p', 'div', 'img', 'em', 'ul', 'li']);
const VERSIONS: readonly QtiVersion[] = ['3.0', '2.2'];
const NAMESPACES = {
  '3.0': [
    'http://www.imsglobal.org/xsd/imsqtiasi_v3p0',
    'http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1',
  ],
  '2.2': ['http://www.imsglobal.org/xsd/imsqti_v2p2', 'http://www.imsglobal.org/xsd/imscp_v1p1'],
} as const;

const set = setOf(places([...course.skills.keys()], 12));
const items = (() => {
  const made = paperFor(set, seats(1)[0]!);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return made.value.items;
})();

const request = (version: QtiVersion) => ({
  words: english,
  version,
  id: 'week-40',
  title: set.title,
  items,
});
const packages = { '3.0': qtiFiles(request('3.0')), '2.2': qtiFiles(request('2.2')) };

/** In the names of 2.2, whichever version it is. */
function read(version: QtiVersion, path: string): Tree {
  const tree = readXml(packages[version][path]!);
  return version === '3.0' && path !== 'imsmanifest.xml' ? inOldNames(tree, [], HTML) : tree;
}

const itemPaths = items.map((_, index) => `items/item-${index + 1}.xml`);

describe.each(VERSIONS)('a QTI %s package', (version) => {
  it('is a zip with the manifest at its root, and comes out the same each time', () => {
    const zip = qtiPackage(request(version));
    const files = unzipSync(zip);
    expect(Object.keys(files)).toEqual(Object.keys(packages[version]));
    expect(Object.keys(files)[0]).toBe('imsmanifest.xml');
    for (const [path, bytes] of Object.entries(files))
      expect(new TextDecoder().decode(bytes)).toBe(packages[version][path]);
    expect(qtiPackage(request(version))).toEqual(zip);
  });

  it('has items and a test of the published structure, named as its version names them', () => {
    for (const path of [...itemPaths, 'test.xml']) {
      const raw = readXml(packages[version][path]!);
      const faults: string[] = [];
      const tree = version === '3.0' ? inOldNames(raw, faults, HTML) : raw;
      expect([...faults, ...faultsIn(tree, MODELS)]).toEqual([]);
      for (const { namespace } of walk(raw)) expect(namespace).toBe(NAMESPACES[version][0]);
    }
  });

  it('has a manifest of the published structure that names every file once and nothing else', () => {
    const manifest = read(version, 'imsmanifest.xml');
    expect(faultsIn(manifest, MANIFEST_MODELS)).toEqual([]);
    expect(manifest.namespace).toBe(NAMESPACES[version][1]);
    expect([only(manifest, 'schema').text, only(manifest, 'schemaversion').text]).toEqual(
      version === '3.0' ? ['QTI Package', '3.0.0'] : ['QTIv2.2 Package', '1.0.0'],
    );
    const named = walk(manifest).flatMap(({ name, attributes }) =>
      name === 'file' ? [attributes['href']!] : [],
    );
    expect(named.toSorted()).toEqual(
      Object.keys(packages[version])
        .filter((path) => path !== 'imsmanifest.xml')
        .toSorted(),
    );
    const resources = only(manifest, 'resources').children;
    const suffix = version === '3.0' ? 'xmlv3p0' : 'xmlv2p2';
    expect(resources.map(({ attributes }) => attributes['type'])).toEqual([
      `imsqti_test_${suffix}`,
      ...items.map(() => `imsqti_item_${suffix}`),
    ]);
    const ids = resources.map(({ attributes }) => attributes['identifier']);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { name, attributes } of walk(manifest))
      if (name === 'dependency') expect(ids).toContain(attributes['identifierref']);
  });

  it('refers to items and drawings that are there, each item by its own identifier', () => {
    const test = read(version, 'test.xml');
    const refs = walk(test).filter(({ name }) => name === 'assessmentItemRef');
    expect(refs.map(({ attributes }) => attributes['href'])).toEqual(itemPaths);
    for (const { attributes } of refs)
      expect(read(version, attributes['href']!).attributes['identifier']).toBe(attributes['identifier']);
    for (const path of itemPaths)
      for (const { name, attributes } of walk(read(version, path))) {
        if (name !== 'img') continue;
        const image = packages[version][attributes['src']!.replace('../', '')];
        expect(readXml(image!).name).toBe('svg');
        expect(attributes['alt']).toContain('Path 1');
      }
  });

  it('declares every response that an interaction gives, and offers every right answer', () => {
    for (const path of itemPaths) {
      const item = read(version, path);
      const declared = walk(item)
        .filter(({ name }) => name === 'responseDeclaration')
        .map(({ attributes }) => attributes['identifier']);
      const given = walk(item).flatMap(({ attributes }) => attributes['responseIdentifier'] ?? []);
      expect(given.toSorted()).toEqual(declared.toSorted());
      const choices = new Set(
        walk(item).flatMap(({ name, attributes }) =>
          name === 'simpleChoice' || name === 'simpleAssociableChoice' ? [attributes['identifier']!] : [],
        ),
      );
      for (const declaration of walk(item).filter(({ name }) => name === 'correctResponse'))
        for (const { text } of declaration.children)
          for (const part of text.split(' ')) if (/^[A-Z]/.test(part)) expect(choices).toContain(part);
      for (const sets of walk(item).filter(({ name }) => name === 'matchInteraction'))
        expect(sets.children.filter(({ name }) => name === 'simpleMatchSet')).toHaveLength(2);
    }
  });
});

/** The responses by which a learner would give an answer in another system. */
function responsesFor(item: Tree, question: Question, answer: Answer): Responses {
  if (answer.kind === 'wiring')
    return answer.choice === undefined ? {} : { RESPONSE: [`CHOICE_${answer.choice + 1}`] };
  if (answer.kind === 'meter') {
    if (answer.volts === undefined) return {};
    return answer.volts === null
      ? { RESPONSE_READS: ['NOTHING'] }
      : { RESPONSE_READS: ['VOLTS'], RESPONSE_VOLTS: [String(answer.volts)] };
  }
  const labels = new Map(askQuestion(question).items.map(({ item: key, label }) => [label, key]));
  return Object.fromEntries(
    walk(item)
      .filter(({ name }) => name === 'matchInteraction')
      .map((interaction) => {
        const [things, states] = interaction.children.filter(({ name }) => name === 'simpleMatchSet');
        const pairs = things!.children.flatMap(({ attributes, text }) => {
          const state = answer.states[labels.get(text)!];
          const target = states!.children.find((each) => each.text === state);
          return target ? [`${attributes['identifier']} ${target.attributes['identifier']}`] : [];
        });
        return [interaction.attributes['responseIdentifier']!, pairs];
      }),
  );
}

/** Any answer somebody could give: choices at random, some left out, readings near and far. */
const answerTo = (question: Question): fc.Arbitrary<Answer> => {
  const right = rightAnswer(question);
  switch (right.kind) {
    case 'wiring':
      return fc
        .option(fc.nat(askQuestion(question).items[0]!.choices.length - 1), { nil: undefined })
        .map((choice) => (choice === undefined ? { kind: 'wiring' } : { kind: 'wiring', choice }));
    case 'meter': {
      const volts = right.volts ?? 0;
      const reading = fc.oneof(
        fc.constantFrom(volts, -volts, 0, null),
        fc.double({ min: -1, max: 1, noNaN: true }).map((by) => Math.round((volts + by) * 100) / 100),
      );
      return reading.map((given) => ({ kind: 'meter', volts: given }));
    }
    default:
      return fc
        .tuple(
          ...askQuestion(question).items.map(({ item, choices }) =>
            fc.option(fc.constantFrom(...choices), { nil: undefined }).map((state) => [item, state] as const),
          ),
        )
        .map(
          (entries) =>
            ({
              kind: right.kind,
              states: Object.fromEntries(entries.filter(([, state]) => state !== undefined)),
            }) as Answer,
        );
  }
};

describe.each(VERSIONS)('the marks of a QTI %s item', (version) => {
  it.each(items.map(({ question }, index) => [question.kind, index] as const))(
    'are those given here, whatever is answered: %s (item %i)',
    (_, index) => {
      const { question, marks } = items[index]!;
      const item = read(version, itemPaths[index]!);
      expect(scoreOf(item, responsesFor(item, question, rightAnswer(question)))).toBeCloseTo(marks, 6);
      expect(scoreOf(item, {})).toBe(0);
      fc.assert(
        fc.property(answerTo(question), (answer) => {
          const here = markAnswer(question, answer).share * marks;
          expect(scoreOf(item, responsesFor(item, question, answer))).toBeCloseTo(here, 6);
        }),
        { numRuns: 12 },
      );
    },
  );

  it('are covered for every kind of item that the set has', () => {
    expect(new Set(items.map(({ question }) => question.kind)).size).toBeGreaterThanOrEqual(6);
  });
});
