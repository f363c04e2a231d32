/** What several commands can be given, as their help says it. */
export const given = {
  arguments: {
    circuit: 'a circuit in the notation or in JSON; - for standard input',
    classOfPeople: 'title, words of it, or id',
    class: 'the class, by its title, words of it, or id',
    set: 'the set, by its title, words of it, or id',
    person: 'id, name for signing in, or name',
  },
  options: {
    acts: 'what is done, in order',
    fault: 'what is wrong from the start',
    width: 'laid out for',
    ownBanks: 'question banks to practise from instead of those that come with the program',
    dataOfServeAndDrill: 'the data folder (default: the one that serve and drill use)',
    dataOfServe: 'the data folder (default: the one that serve uses)',
    banks: 'question banks instead of those that come with the program',
    addressForLinks: 'the address that people open, for links',
  },
};
