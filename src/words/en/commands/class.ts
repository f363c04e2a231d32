import { learners, people, slips } from './counted.ts';

/** What a title or a name is refused for that a spreadsheet would run. */
const formula = 'begins with a letter or digit: spreadsheets run what begins with = + - or @';

export const classOf = {
  help: {
    summary: 'classes and who is in them',
    description: 'Runs classes on the store itself, also while the server is running (docs/classes.md).',
    new: {
      summary: 'make a class',
      description: 'Makes a class, with a code by which learners join it.',
      title: 'what it is called',
      intake: 'which group of newcomers it is',
      tutor: 'whose class it is: id, name for signing in, or name',
    },
    list: {
      summary: 'name all classes',
      description: 'Names all classes, with how many learners each has.',
    },
    show: {
      summary: 'show who is in a class',
      description: 'Shows who is in a class.',
    },
    code: {
      summary: 'show or change the joining code',
      description: 'Shows the joining code of a class, or changes it.',
      fresh: 'another code; the one so far no longer works',
      close: 'nobody may join from now on',
      open: 'may be joined again',
    },
    add: {
      summary: 'make learners, with a link for each',
      description: 'Makes learners in a class, each with a link that lets in once, within seven days.',
      names: 'what they are called',
      from: 'a file with a name on each line; - reads standard input',
    },
    link: {
      summary: 'make a link that lets somebody in',
      description:
        'Makes a link that lets somebody in once; password and sessions so far end when it is used.',
      note: 'Also the way back in for an administrator who has forgotten the password.',
    },
    tutor: {
      summary: 'make somebody tutor of a class',
      description: 'Makes somebody tutor of a class.',
      person: 'who: id, name for signing in, or name',
      new: 'somebody who isn’t there yet, with a link to hand over',
    },
    slips: {
      summary: 'write slips to hand out',
      description: 'Writes slips to cut apart and hand out, as a PDF.',
      out: 'the PDF to write',
      links: 'with a name and a link each, for all who have no password yet',
      count: 'how many slips with the code',
    },
    roster: {
      summary: 'take people over, or give them out',
      description: 'Takes people over into a class, or gives them out.',
      in: 'a .csv with the column name, or the folder of a OneRoster 1.1 export; - is standard input',
      source: 'which class of the export, by its sourcedId',
      look: 'only say what would come of it',
      out: 'a .csv, or a .zip with OneRoster 1.1',
    },
  },
  title: {
    empty: "A title can't be empty.",
    wrong: (given: string) => `A title can't be ${given}.`,
    formula: `A title ${formula}.`,
    right: 'One line, and not too long.',
  },
  intake: {
    empty: "An intake can't be empty.",
    wrong: (given: string) => `An intake can't be ${given}.`,
    formula: `An intake ${formula}.`,
    right: 'One line, and not too long.',
  },
  name: {
    wrong: (given: string) => `${given} can't be a name.`,
    formula: `A name ${formula}.`,
    right: 'One line, 1 to 80 letters.',
  },
  isALearner: {
    wrong: (name: string) => `${name} is a learner.`,
    right: 'polewise class tutor makes a tutor.',
  },
  made: ({ title, id, code }: { title: string; id: string; code: string }) =>
    `${title} (${id}): learners join with the code ${code}.`,
  row: (row: { title: string; id: string; learners: number; intake: string | null; ended: boolean }) => {
    const more = [learners(row.learners), row.intake, row.ended ? 'ended' : null];
    return `${row.title} (${row.id}): ${more.filter((text) => text !== null).join(', ')}`;
  },
  noneYet: 'There is no class yet: polewise class new "Flour line".',
  mayBeJoined: ({ title, id, code }: { title: string; id: string; code: string }) =>
    `${title} (${id}): code ${code}, may be joined.`,
  mayNotBeJoined: ({ title, id, code }: { title: string; id: string; code: string }) =>
    `${title} (${id}): code ${code}, may not be joined.`,
  member: ({
    name,
    id,
    tutor,
    signIn,
  }: {
    name: string;
    id: string;
    tutor: boolean;
    signIn: string | null;
  }) => `${name} (${id}): ${tutor ? 'tutor, ' : ''}${signIn ?? 'has not come in yet'}`,
  nobodyYet: 'Nobody is in it yet.',
  openAndClose: {
    wrong: '--open and --close contradict each other.',
    right: 'Leave one of them out.',
  },
  closedCode: (code: string) => `${code} (may not be joined)`,
  nobodyNamed: {
    wrong: 'Nobody is named.',
    right: 'Name learners, or a file with --from.',
  },
  tooManyNames: {
    wrong: (names: number) => `These are ${names} names.`,
    right: (most: number) => `At most ${most} go at once.`,
  },
  full: {
    wrong: 'The class would be too full.',
    right: 'A class has 1,000 learners at most.',
  },
  linkOf: ({ name, link }: { name: string; link: string }) => `${name}: ${link}`,
  noAddress: {
    wrong: (given: string) => `--address ${given} is no address.`,
    right: 'Such as https://practice.example',
  },
  eitherThereOrNew: {
    wrong: 'Name either somebody who is there, or somebody new with --new.',
    right: 'polewise class tutor --help has examples.',
  },
  isTutor: ({ name, title }: { name: string; title: string }) => `${name} is tutor of ${title}.`,
  roster: {
    wanted: 'Name a .csv file, or the folder with the files of a OneRoster 1.1 export.',
    manners: { learner: 'learner', tutor: 'tutor' },
    results: { new: 'new', joined: 'joined', already: 'already' },
    line: ({ name, manner, result }: { name: string; manner: string; result: string }) =>
      `${name}: ${manner}, ${result}`,
    passedOver: (why: string) => `Passed over: ${why}`,
    nothingChanged: 'Nothing was changed.',
    neitherCsvNorZip: {
      wrong: (file: string) => `${file}: neither .csv nor .zip.`,
      right: 'A .csv is one table; a .zip has the files of OneRoster 1.1.',
    },
    given: ({ count, file }: { count: number; file: string }) => `${people(count)} in ${file}.`,
    eitherInOrOut: {
      wrong: 'Say either --in or --out.',
      right: 'polewise class roster --help has examples.',
    },
  },
  slips: {
    everybodyHasAPassword: {
      wrong: 'Everybody in the class has a password.',
      right: 'polewise class link makes one link.',
    },
    written: ({ count, file }: { count: number; file: string }) => `${slips(count)} in ${file}.`,
  },
};
