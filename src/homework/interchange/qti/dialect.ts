/**
 * The two versions of QTI that packages are written in. They have one model and differ in how names are written (2.2:
 * `responseDeclaration`; 3.0: `qti-response-declaration`), in namespaces and in the words of the manifest.
 */
import type { Naming } from './xml.ts';

export type QtiVersion = '3.0' | '2.2';

export interface Dialect extends Naming {
  readonly version: QtiVersion;
  readonly namespace: string;
  readonly schemaLocation: string;
  readonly manifest: {
    readonly namespace: string;
    readonly schema: string;
    readonly schemaVersion: string;
  };
  /** Types of the manifest's resources. */
  readonly itemType: string;
  readonly testType: string;
}

/** Taken over from HTML, written alike in both. */
const HTML = new Set(['div', 'p', 'img', 'ul', 'li', 'em']);

const kebab = (name: string): string => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);

const SCHEMAS_3 = 'https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd';

const v3: Dialect = {
  version: '3.0',
  namespace: 'http://www.imsglobal.org/xsd/imsqtiasi_v3p0',
  schemaLocation: `http://www.imsglobal.org/xsd/imsqtiasi_v3p0 ${SCHEMAS_3}/imsqti_asiv3p0_v1p0.xsd`,
  manifest: {
    namespace: 'http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1',
    schema: 'QTI Package',
    schemaVersion: '3.0.0',
  },
  itemType: 'imsqti_item_xmlv3p0',
  testType: 'imsqti_test_xmlv3p0',
  element: (name) => (HTML.has(name) ? name : `qti-${kebab(name)}`),
  attribute: (name) => (name.includes(':') || name === 'xmlns' ? name : kebab(name)),
};

const v22: Dialect = {
  version: '2.2',
  namespace: 'http://www.imsglobal.org/xsd/imsqti_v2p2',
  schemaLocation:
    'http://www.imsglobal.org/xsd/imsqti_v2p2 http://www.imsglobal.org/xsd/qti/qtiv2p2/imsqti_v2p2.xsd',
  manifest: {
    namespace: 'http://www.imsglobal.org/xsd/imscp_v1p1',
    schema: 'QTIv2.2 Package',
    schemaVersion: '1.0.0',
  },
  itemType: 'imsqti_item_xmlv2p2',
  testType: 'imsqti_test_xmlv2p2',
  element: (name) => name,
  attribute: (name) => name,
};

export const dialectOf = (version: QtiVersion): Dialect => (version === '3.0' ? v3 : v22);
