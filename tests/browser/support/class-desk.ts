/** A server that people sign in to, its administrator at a desk, and devices for everybody else; for one test file. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { builtPage } from '../../support/built.ts';
import { comeFirst, makeClass } from './coming-in.ts';
import { type Devices, devices } from './devices.ts';
import { HomeworkServer } from './homework-server.ts';
import { DESK } from './practising.ts';

export interface ClassDesk {
  readonly folder: string;
  readonly server: HomeworkServer;
  /** Where the administrator is signed in. */
  readonly desk: Page;
  readonly take: Devices['take'];
  /** A class of the administrator. */
  newClass(title: string): Promise<{ code: string; id: string }>;
}

/** Sets it up before the tests of the file and takes it down after them. */
export function classDesk(): ClassDesk {
  const there = {} as { folder: string; server: HomeworkServer; desk: Page };
  beforeAll(async () => {
    there.folder = await builtPage();
    there.server = await HomeworkServer.begin(there.folder, []);
  });
  afterAll(() => there.server?.end());
  const { take, stay } = devices();
  beforeAll(async () => {
    there.desk = (await stay(DESK)).page;
    await comeFirst(there.desk, there.server, 'Iris Kalmar');
  });
  return Object.assign(there, {
    take,
    async newClass(title: string) {
      await there.desk.goto(`${there.server.address}/#/classes`);
      return makeClass(there.desk, title);
    },
  });
}
