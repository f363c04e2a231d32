/** One class: what stands above its parts; its name, its end. */
export const one = {
  class: 'Class',
  all: 'All classes',
  fetching: 'Fetching the class…',
  back: 'Classes',
  joiningCode: 'Joining code',
  closed: 'closed',
  learners: 'Learners',
  ended: 'This class has ended: nobody joins it, and it is kept as it was.',
  partsOf: 'Parts of the class',
  parts: {
    members: 'Members',
    slips: 'Joining code',
    add: 'Add by name',
    roster: 'Roster',
    change: 'Change or end',
  },
  homework: 'Homework',
  title: {
    name: 'Name of the class',
    nameNote: 'Learners see it when they join: Control circuits, Thursday evening.',
    nameTooLong: 'A name of one line, at most 120 letters.',
    intake: 'Intake',
    intakeNote: 'Where you number your groups: Autumn 2026. It may stay empty.',
    intakeTooLong: 'One line of at most 60 letters.',
  },
  change: {
    nameAndIntake: 'Name and intake',
    keep: 'Keep',
    kept: 'Kept.',
  },
  goOn: {
    title: 'Go on with the class',
    ask: 'Go on with the class…',
    sure: 'Go on with it',
    means: 'It is as it was when it ended, and may be joined again if its code is open.',
  },
  end: {
    title: 'End the class',
    ask: 'End the class…',
    sure: 'End it',
    means:
      'Nobody joins it any more, and it leaves the list of classes that go on. Its learners, their practice and its homework stay as they are; it can be taken up again.',
  },
  erase: {
    title: 'Erase the class',
    ask: 'Erase the class…',
    sure: 'Erase it for good',
    means:
      '<strong>This can’t be undone.</strong> Gone are the class, all its homework sets, papers and marks. Its people stay, and what they have practised.',
  },
};
