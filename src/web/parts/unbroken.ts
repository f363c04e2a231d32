/** Keeps a designation or a range of terminals in one piece where a line ends: `-K3:11-14`. */
export const unbroken = (text: string): string =>
  text.replace(/(^|[\s("/,;:])-(?=[A-Z])/g, '$1-\u2060').replace(/(\d)-(?=\d)/g, '$1-\u2060');
