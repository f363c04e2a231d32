/**
 * A homework set with fixed questions as a QTI package: a zip with the manifest, one item a file, a test that holds them
 * together, and the drawings as SVG. Right answers are in it: it goes to another system's tutors, not to learners.
 */
import type { PaperItem } from '../../../../shared/homework.ts';
import { describe, drawSvgs, layOut, PROFILES } from '../../../drawing/index.ts';
import { askQuestion, tellQuestion } from '../../../questions/index.ts';
import type { Words } from '../../../words/index.ts';
import { zipFiles } from '../zip.ts';
import { type Dialect, dialectOf, type QtiVersion } from './dialect.ts';
import { qtiParts } from './parts.ts';
import { paragraph, scoreDeclaration } from './vocabulary.ts';
import { type Naming, type XmlElement, xml, xmlDocument } from './xml.ts';

const SCHEMA_INSTANCE = 'http://www.w3.org/2001/XMLSchema-instance';
const PLAIN: Naming = { element: (name) => name, attribute: (name) => name };

export interface QtiRequest {
  readonly words: Words;
  readonly version: QtiVersion;
  /** Begins with a letter, then letters, digits, `-`, `_` and `.`: becomes part of every identifier. */
  readonly id: string;
  readonly title: string;
  /** The items of one paper: everybody gets these. */
  readonly items: readonly Pick<PaperItem, 'question' | 'marks'>[];
}

interface ItemFiles {
  readonly identifier: string;
  readonly href: string;
  readonly images: readonly string[];
  readonly files: Readonly<Record<string, string>>;
}

const rootAttributes = ({ namespace, schemaLocation }: Dialect): XmlElement['attributes'] => ({
  xmlns: namespace,
  'xmlns:xsi': SCHEMA_INSTANCE,
  'xsi:schemaLocation': schemaLocation,
});

function itemFiles(
  { question, marks }: QtiRequest['items'][number],
  number: number,
  { words, id, title }: QtiRequest,
  dialect: Dialect,
): ItemFiles {
  const identifier = `${id}-item-${number}`;
  const asked = tellQuestion(words, askQuestion(question));
  const { circuit } = question;
  const scene = layOut(words, circuit, PROFILES.screen);
  const svgs = drawSvgs(scene, { label: circuit.title ?? asked.title });
  const images = svgs.map((_, sheet) => `images/item-${number}-sheet-${sheet + 1}.svg`);
  const parts = qtiParts(words, question, asked, marks);
  const root = xml(
    'assessmentItem',
    {
      ...rootAttributes(dialect),
      identifier,
      title: words.interchange.itemTitle({ set: title, number, asked: asked.title }),
      adaptive: false,
      timeDependent: false,
      'xml:lang': words.speech.language,
    },
    [
      ...parts.responses,
      scoreDeclaration(marks),
      xml('itemBody', {}, [
        ...asked.situation.map((sentence) => paragraph(sentence)),
        // Items lie in a folder of their own, beside the one with the images.
        ...images.map((href, sheet) =>
          paragraph(
            xml('img', {
              src: `../${href}`,
              alt: describe(words, circuit, { sheet: scene.sheets[sheet]!.sheet }),
            }),
          ),
        ),
        ...asked.cautions.map((caution) => paragraph(xml('em', {}, [caution]))),
        ...parts.interactions,
      ]),
      xml('responseProcessing', {}, parts.processing),
    ],
  );
  const href = `items/item-${number}.xml`;
  return {
    identifier,
    href,
    images,
    files: {
      [href]: xmlDocument(root, dialect),
      ...Object.fromEntries(images.map((image, sheet) => [image, svgs[sheet]!])),
    },
  };
}

function testDocument({ id, title }: QtiRequest, items: readonly ItemFiles[], dialect: Dialect): string {
  const root = xml('assessmentTest', { ...rootAttributes(dialect), identifier: `${id}-test`, title }, [
    xml('outcomeDeclaration', { identifier: 'SCORE', cardinality: 'single', baseType: 'float' }),
    xml('testPart', { identifier: 'part-1', navigationMode: 'nonlinear', submissionMode: 'simultaneous' }, [
      xml(
        'assessmentSection',
        { identifier: 'section-1', title, visible: true },
        items.map(({ identifier, href }) => xml('assessmentItemRef', { identifier, href })),
      ),
    ]),
    xml('outcomeProcessing', {}, [
      xml('setOutcomeValue', { identifier: 'SCORE' }, [
        xml('sum', {}, [xml('testVariables', { variableIdentifier: 'SCORE' })]),
      ]),
    ]),
  ]);
  return xmlDocument(root, dialect);
}

function manifest({ id }: QtiRequest, items: readonly ItemFiles[], dialect: Dialect): string {
  const { namespace, schema, schemaVersion } = dialect.manifest;
  const file = (href: string): XmlElement => xml('file', { href });
  const root = xml('manifest', { xmlns: namespace, identifier: `${id}-manifest` }, [
    xml('metadata', {}, [xml('schema', {}, [schema]), xml('schemaversion', {}, [schemaVersion])]),
    xml('organizations'),
    xml('resources', {}, [
      xml('resource', { identifier: `${id}-test`, type: dialect.testType, href: 'test.xml' }, [
        file('test.xml'),
        ...items.map(({ identifier }) => xml('dependency', { identifierref: identifier })),
      ]),
      ...items.map(({ identifier, href, images }) =>
        xml('resource', { identifier, type: dialect.itemType, href }, [file(href), ...images.map(file)]),
      ),
    ]),
  ]);
  return xmlDocument(root, PLAIN);
}

/** The files of a package by path; `qtiPackage` is the same as one zip. */
export function qtiFiles(request: QtiRequest): Readonly<Record<string, string>> {
  const dialect = dialectOf(request.version);
  const items = request.items.map((item, index) => itemFiles(item, index + 1, request, dialect));
  return {
    'imsmanifest.xml': manifest(request, items, dialect),
    'test.xml': testDocument(request, items, dialect),
    ...Object.assign({}, ...items.map(({ files }) => files)),
  };
}

export const qtiPackage = (request: QtiRequest): Uint8Array => zipFiles(qtiFiles(request));
