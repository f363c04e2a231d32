/** Around every screen. */
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
};
