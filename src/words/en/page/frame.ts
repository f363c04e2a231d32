/** Around every screen. */
import { speech } from '../speech.ts';

export const frame = {
  screens: {
    practise: 'Practise',
    homework: 'Homework',
    lessons: 'Lessons',
    progress: 'Progress',
    try: 'Try it',
    bench: 'Write',
    classes: 'Classes',
    account: 'Account',
    enter: 'Sign in',
    join: 'Join a class',
  },
  titleOf: (screen: string) => `${screen} · Polewise`,
  screensList: 'Screens',
  accountOf: '<away>Account of </away>{person}',
  lookingElsewhere: 'Looking whether you have practised on another device…',
  caution:
    'Polewise teaches reading drawings. It is no instruction to work on live equipment: isolate, lock off, prove dead, mind supplies from elsewhere, and follow local codes and licensed practice. All plants are invented.',
  drawingFirst: 'Drawing the first circuit…',
  tryAgain: 'Try again',
  loading: 'Loading…',
  partMissing: 'This part of the page could not be loaded. Once it has been, it works without network.',
  questionsMissing:
    'The questions have not been loaded yet. Connect once, then everything works without network.',
  /** Changes to it. */
  theme: { light: 'Light', dark: 'Dark' },
  /** That the server has another page than this one. */
  renewal: {
    newer: 'The page has been renewed.',
    'too-old': 'This page is older than its server: nothing can be sent or fetched until it is loaded anew.',
    part: 'The page has been renewed, and a part of this one is no longer to be had.',
    comesBack: 'What stands here comes back, and no answer is lost.',
    writtenGoes: 'No answer is lost; what is being written on this screen goes.',
    loadAnew: 'Load anew',
  },
  /** What waits for the server, and why. */
  standing: {
    offline: 'No network. Everything works.',
    waitForNetwork: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer waits for the network.',
        other: `${answers} answers wait for the network.`,
      }),
    waitToBeSent: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer waits to be sent.',
        other: `${answers} answers wait to be sent.`,
      }),
    waitForNewPage: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer waits until the page is loaded anew.',
        other: `${answers} answers wait until the page is loaded anew.`,
      }),
    signedOut: 'You are no longer signed in here.',
    goesOn: 'Practice goes on; nothing is lost.',
    waitSafely: (answers: number) =>
      speech.plural(answers, {
        one: '1 answer waits to be sent; nothing is lost.',
        other: `${answers} answers wait to be sent; nothing is lost.`,
      }),
    signInAgain: 'Sign in again',
    thrownAway: (answers: number) =>
      speech.plural(answers, {
        one: 'This browser has thrown away what the page kept on this device. 1 answer not yet sent is gone.',
        other: `This browser has thrown away what the page kept on this device. ${answers} answers not yet sent are gone.`,
      }),
  },
  /** What is on its way from other devices. */
  coming: {
    lines: ({ here, all }: { here: number; all: number }) =>
      `Your answers from other devices are on their way: ${speech.number(here)} of ${speech.number(all)}. Practice goes by all of them already.`,
    answers: ({ here, all }: { here: number; all: number }) =>
      `Your answers are being copied to this device: ${speech.number(here)} of ${speech.number(all)}. Nothing has to wait for it.`,
  },
  /** Why the device keeps nothing. */
  device: {
    refused:
      'This browser does not let the page keep anything, so no answer would be kept. A private window may be why.',
    full: 'There is no room left on this device: something else on it has to go.',
    renewedElsewhere: 'The page was renewed in another tab. Load it anew here.',
    olderElsewhere: 'The page is open in another tab as it was before it was renewed. Close that tab.',
    notNow: 'This browser does not let the page keep anything just now.',
  },
  /** Why a call to the server came to nothing, and what to do. */
  server: {
    partMissing: {
      message: 'This part of the page could not be loaded.',
      hint: 'Try again when there is a network.',
    },
    silent: {
      message: 'The server does not answer.',
      hint: 'There may be no network. Nothing is lost: try again when there is.',
    },
    another: (status: number) => ({
      message: `Something else answered in the server’s place (${status}).`,
      hint: 'Is this device in the right network? Then try again.',
    }),
    unknown: {
      message: 'The server answered in a way that this page does not know.',
      hint: 'It may have been renewed: load the page again.',
    },
    fileBroken: { message: 'The file did not arrive whole.', hint: 'Try again.' },
  },
};
