/** The scenario of the demo: people, classes and sets that are made up, and named so that nobody takes them for real. */
export const madeUp = {
  groups: {
    first: { title: 'Flour line fitters (made up)', intake: 'Autumn' },
    second: { title: 'Flour line fitters, second year (made up)', intake: 'Spring' },
  },
  /** By what they sign in with. */
  people: {
    'berta.millstone': 'Berta Millstone',
    'mill.office': 'Mill office',
    'ines.sifter': 'Ines Sifter',
    'tomas.hopper': 'Tomas Hopper',
    'petra.bagger': 'Petra Bagger',
    'olu.conveyor': 'Olu Conveyor',
    'mara.bucket': 'Mara Bucket',
    'jon.chute': 'Jon Chute',
    'lea.roller': 'Lea Roller',
    'sam.scale': 'Sam Scale',
    'nia.damper': 'Nia Damper',
    'ravi.filter': 'Ravi Filter',
    'eva.bolter': 'Eva Bolter',
    'finn.silo': 'Finn Silo',
    'kim.auger': 'Kim Auger',
    'ayo.blower': 'Ayo Blower',
    'dora.magnet': 'Dora Magnet',
    'max.bearing': 'Max Bearing',
  },
  sets: {
    contacts: 'Flour line 1: make and break',
    changeover: 'Flour line 2: changeover poles and chains',
    sealIn: 'Flour line 3: seal-in and controller inputs',
  },
  /** Why half of a mark was given back. */
  overrideReason: 'Explained rightly at the board; the wrong lamp was touched.',
};
