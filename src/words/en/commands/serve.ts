export const serve = {
  help: {
    summary: 'practise in the browser',
    description:
      'Serves the page on this machine, for whoever sits at it, and keeps the answers; or, with --class, for classes.',
    options: {
      port: 'the port; 0 takes any that is free',
      host: 'the address to listen on',
      allowHost: 'answer to this name too; may be given several times',
      class: 'people sign in: tutors, learners and an administrator (docs/classes.md)',
      address: 'with --class: the address that people open, for links and slips',
      behindProxy: 'with --class: a proxy before it speaks https and says whose request it is',
      plainHttp: 'with --class: passwords may cross the network in the clear',
      data: 'where answers are kept (default: the data folder that drill uses)',
      log: 'what is written to standard error, as JSON lines',
    },
    note: 'With DATABASE_URL answers are kept in that PostgreSQL database instead of a file.',
  },
  portTaken: {
    wrong: (port: number) => `Port ${port} is taken.`,
    right: (port: number) =>
      `Perhaps polewise runs already: open http://localhost:${port}. Otherwise choose another with --port, or 0 for any.`,
  },
  portForbidden: {
    wrong: (port: number) => `Port ${port} may not be used.`,
    right: 'Choose one above 1023.',
  },
  noSuchHost: {
    wrong: (host: string) => `This machine has no address ${host}.`,
    right: 'Leave out --host.',
  },
  firstRun: ({ address, key }: { address: string; key: string }) =>
    `There is no administrator yet. Open ${address} and give this key: ${key}`,
  firstRunKey: 'Whoever has the key becomes the administrator; it is good for nothing afterwards.',
  ready: (address: string) => `Polewise is ready: ${address}`,
  keptInFile: (file: string) => `Answers are kept in ${file}.`,
  keptInDatabase: 'Answers are kept in the database.',
  noPage: 'The page has not been built: npm run build.',
  stopWith: 'Stop with Ctrl-C.',
  stopped: 'Stopped; every answer is kept.',
  waiting: ({ told, detail }: { told: string; detail: string }) =>
    `${told} (${detail}) It is waited for; Ctrl-C ends that.`,
  reach: {
    noAddress: {
      wrong: (given: string) => `--address ${given} is not the address of a server.`,
      right: 'Give it as people open it, without a path: https://practice.example',
    },
    onlyForClasses: {
      wrong: '--behind-proxy, --plain-http and --address are for a server that people sign in to.',
      right: 'Add --class, or leave them out.',
    },
    nobodySignsIn: {
      wrong: (host: string) =>
        `With --host ${host} others could reach the server, and nobody has to sign in.`,
      right:
        'Leave it out; or let people sign in with --class; or put something that asks for a sign-in before it, and name it with --allow-host (docs/deploying.md).',
    },
    proxyAndPlain: {
      wrong: '--behind-proxy and --plain-http contradict each other.',
      right: 'Leave one of them out.',
    },
    passwordsInTheClear: {
      wrong: (host: string) => `With --host ${host} passwords would cross the network in the clear.`,
      right:
        'Put a proxy that speaks https before it and say --behind-proxy; or, in a network whose every device you trust, say --plain-http (docs/deploying.md).',
    },
    linksInTheClear: {
      wrong: (origin: string) => `Links to ${origin} would cross the network in the clear.`,
      right: 'Give the https address; or say --plain-http (docs/deploying.md).',
    },
    noName: {
      wrong: 'Nobody could open it: the server answers only to names that it knows.',
      right: 'Name the address that people open: --address https://practice.example',
    },
  },
};
