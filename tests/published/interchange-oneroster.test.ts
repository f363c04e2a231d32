/**
 * OneRoster 1.1 CSV against the specification's tables (IMS OneRoster v1.1, CSV tables, 2017): the header lines and the
 * manifest's properties as public implementations of it have them, written out here a second time.
 */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Roster, readCsv, readRoster, writeRoster, zipFiles } from '../../src/homework/index.ts';

const HEADERS: Readonly<Record<string, string>> = {
  'manifest.csv': 'propertyName,value',
  'academicSessions.csv':
    'sourcedId,status,dateLastModified,title,type,startDate,endDate,parentSourcedId,schoolYear',
  'classes.csv':
    'sourcedId,status,dateLastModified,title,grades,courseSourcedId,classCode,classType,location,schoolSourcedId,termSourcedIds,subjects,subjectCodes,periods',
  'courses.csv':
    'sourcedId,status,dateLastModified,schoolYearSourcedId,title,courseCode,grades,orgSourcedId,subjects,subjectCodes',
  'enrollments.csv':
    'sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,userSourcedId,role,primary,beginDate,endDate',
  'orgs.csv': 'sourcedId,status,dateLastModified,name,type,identifier,parentSourcedId',
  'users.csv':
    'sourcedId,status,dateLastModified,enabledUser,orgSourcedIds,role,username,userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password',
};

/** Columns that every row has to fill. */
const REQUIRED: Readonly<Record<string, readonly string[]>> = {
  'academicSessions.csv': ['sourcedId', 'title', 'type', 'startDate', 'endDate', 'schoolYear'],
  'classes.csv': ['sourcedId', 'title', 'courseSourcedId', 'classType', 'schoolSourcedId', 'termSourcedIds'],
  'courses.csv': ['sourcedId', 'title', 'orgSourcedId'],
  'enrollments.csv': ['sourcedId', 'classSourcedId', 'schoolSourcedId', 'userSourcedId', 'role'],
  'orgs.csv': ['sourcedId', 'name', 'type'],
  'users.csv': ['sourcedId', 'enabledUser', 'orgSourcedIds', 'role', 'username', 'givenName', 'familyName'],
};

const frame = {
  org: { sourcedId: 'org-1', name: 'Ferry ramp training centre' },
  session: {
    sourcedId: 'year-27',
    title: '2026/27',
    startDate: '2026-09-01',
    endDate: '2027-07-31',
    schoolYear: '2027',
  },
  course: { sourcedId: 'course-1', title: 'Reading control drawings' },
};

const user = (sourcedId: string, givenName: string, role: 'student' | 'teacher' = 'student') => ({
  sourcedId,
  status: 'active' as const,
  enabled: true,
  role,
  username: sourcedId,
  givenName,
  familyName: 'Example',
});

const roster: Roster = {
  users: [user('u1', 'Ada'), user('u2', 'Ben, "the younger"'), user('u3', 'Cem', 'teacher')],
  classes: [{ sourcedId: 'c1', status: 'active', title: 'Fitters, intake 4', classCode: 'FIT4' }],
  enrollments: [
    { sourcedId: 'e1', status: 'active', class: 'c1', user: 'u1', role: 'student' },
    { sourcedId: 'e2', status: 'active', class: 'c1', user: 'u2', role: 'student' },
    { sourcedId: 'e3', status: 'active', class: 'c1', user: 'u3', role: 'teacher' },
  ],
};

const files = writeRoster(roster, frame);
const problems = (changed: Readonly<Record<string, string>>) => {
  const read = readRoster({ ...files, ...changed });
  return read.ok ? [] : read.problems.map(({ code, file, line }) => [code, file, line]);
};

describe('a roster written', () => {
  it('has every file with all columns in their order', () => {
    for (const [file, header] of Object.entries(HEADERS)) expect(files[file]!.split('\r\n')[0]).toBe(header);
    expect(Object.keys(files).toSorted()).toEqual(Object.keys(HEADERS).toSorted());
  });

  it('has a manifest that says of each file of the standard whether it is there', () => {
    expect(files['manifest.csv']!.trim().split('\r\n').slice(1)).toEqual([
      'manifest.version,1.0',
      'oneroster.version,1.1',
      'file.academicSessions,bulk',
      'file.categories,absent',
      'file.classes,bulk',
      'file.classResources,absent',
      'file.courses,bulk',
      'file.courseResources,absent',
      'file.demographics,absent',
      'file.enrollments,bulk',
      'file.lineItems,absent',
      'file.orgs,bulk',
      'file.resources,absent',
      'file.results,absent',
      'file.users,bulk',
      'source.systemName,Polewise',
      'source.systemCode,polewise',
    ]);
  });

  it('fills every column that has to be filled, and leaves status and date empty as a bulk exchange must', () => {
    for (const [file, required] of Object.entries(REQUIRED)) {
      const read = readCsv(files[file]!);
      if (!read.ok) throw new Error(file);
      expect(read.value.rows.length).toBeGreaterThan(0);
      for (const row of read.value.rows) {
        for (const column of required) expect(row.value(column), `${file} ${column}`).not.toBe('');
        expect([row.value('status'), row.value('dateLastModified')]).toEqual(['', '']);
      }
    }
  });

  it('refers only to what is in it', () => {
    const column = (file: string, name: string): string[] => {
      const read = readCsv(files[file]!);
      return read.ok ? read.value.rows.map((row) => row.value(name)) : [];
    };
    const ids = (file: string): ReadonlySet<string> => new Set(column(file, 'sourcedId'));
    const refers = (file: string, name: string, to: string): void => {
      for (const id of column(file, name)) expect(ids(to), `${file} ${name}`).toContain(id);
    };
    refers('classes.csv', 'courseSourcedId', 'courses.csv');
    refers('classes.csv', 'schoolSourcedId', 'orgs.csv');
    refers('classes.csv', 'termSourcedIds', 'academicSessions.csv');
    refers('courses.csv', 'orgSourcedId', 'orgs.csv');
    refers('courses.csv', 'schoolYearSourcedId', 'academicSessions.csv');
    refers('enrollments.csv', 'classSourcedId', 'classes.csv');
    refers('enrollments.csv', 'schoolSourcedId', 'orgs.csv');
    refers('enrollments.csv', 'userSourcedId', 'users.csv');
    refers('users.csv', 'orgSourcedIds', 'orgs.csv');
  });

  it('leaves out who is gone', () => {
    const gone = { ...roster, users: [{ ...roster.users[0]!, status: 'tobedeleted' as const }] };
    expect(writeRoster(gone, frame)['users.csv']!.trim().split('\r\n')).toHaveLength(1);
  });

  it('is the same zip each time', () => {
    expect(zipFiles(files)).toEqual(zipFiles(writeRoster(roster, frame)));
  });
});

describe('a roster read', () => {
  it('is what was written', () => {
    expect(readRoster(files)).toEqual({ ok: true, value: roster });
  });

  it('is what was written, whatever the names', () => {
    const name = fc
      .string({ minLength: 1, maxLength: 20 })
      .filter((text) => text.trim() === text && text !== '');
    fc.assert(
      fc.property(fc.array(name, { minLength: 1, maxLength: 5 }), (names) => {
        const users = names.map((each, index) => user(`u${index}`, each));
        const made = { users, classes: roster.classes, enrollments: [] };
        expect(readRoster(writeRoster(made, frame))).toEqual({ ok: true, value: made });
      }),
    );
  });

  it('takes columns in any order and passes over those of other versions and profiles', () => {
    const classes = 'title,metadata.local.colour,sourcedId,classCode\nFitters,blue,c1,F\n';
    const read = readRoster({ ...files, 'classes.csv': classes });
    expect(read.ok && read.value.classes).toEqual([
      { sourcedId: 'c1', status: 'active', title: 'Fitters', classCode: 'F' },
    ]);
  });

  it('takes nothing of a person beyond what is used here', () => {
    const users = `${HEADERS['users.csv']}\nu1,,,true,org-1,student,ada,,Ada,Example,,,ada@mail.example,1,2,,,secret\n`;
    const read = readRoster({
      'users.csv': users,
      'classes.csv': files['classes.csv']!,
      'enrollments.csv': HEADERS['enrollments.csv']!,
    });
    expect(read.ok && JSON.stringify(read.value)).not.toMatch(/secret|mail/);
  });

  it('keeps what a delta says is gone, and lets it refer to what is elsewhere', () => {
    const delta = {
      'manifest.csv': files['manifest.csv']!.replace('file.enrollments,bulk', 'file.enrollments,delta'),
      'enrollments.csv': `${HEADERS['enrollments.csv']}\ne9,tobedeleted,2026-10-01T08:00:00.000Z,c7,org-1,u7,student,,,\n`,
    };
    const read = readRoster({ ...files, ...delta });
    expect(read.ok && read.value.enrollments).toMatchObject([{ sourcedId: 'e9', status: 'tobedeleted' }]);
    expect(problems({ 'enrollments.csv': delta['enrollments.csv'] })).toEqual([
      ['roster-unknown-reference', 'enrollments.csv', 2],
      ['roster-unknown-reference', 'enrollments.csv', 2],
    ]);
  });

  it('is refused whole, with every mistake, its file and line', () => {
    const head = HEADERS['users.csv']!;
    expect(
      problems({
        'users.csv': `${head}\nu1,,,perhaps,org-1,student,a,,Ada,E,,,,,,,,\nu2,,,true,org-1,king,b,,,E,,,,,,,,\nu3,,,true,org-1,king,c,,C,E,,,,,,,,\n`,
        'classes.csv': 'sourcedId\nc1\n',
      }),
    ).toEqual([
      ['roster-bad-value', 'users.csv', 2],
      ['roster-missing-value', 'users.csv', 3],
      ['roster-bad-value', 'users.csv', 4],
      ['roster-missing-column', 'classes.csv', 1],
    ]);
    expect(problems({ 'users.csv': `${head}\nu1,,,"true\n` })).toEqual([['csv-quote', 'users.csv', 2]]);
    expect(readRoster({ 'users.csv': files['users.csv']! })).toMatchObject({
      ok: false,
      problems: [
        { code: 'roster-missing-file', file: 'classes.csv' },
        { code: 'roster-missing-file', file: 'enrollments.csv' },
      ],
    });
  });

  it('is refused with a person who is there twice', () => {
    const twice = files['users.csv']! + files['users.csv']!.split('\r\n')[1]!;
    expect(problems({ 'users.csv': twice })).toEqual([['roster-twice', 'users.csv', 5]]);
  });
});
