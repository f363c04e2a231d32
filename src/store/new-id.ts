import { customAlphabet } from 'nanoid';

/**
 * A new name for a person, a class, a set or a paper: 125 random bits in letters and digits. No hyphen and no underscore,
 * so that it can be typed in a command, where a hyphen in front would make an option of it.
 */
export const newId: () => string = customAlphabet(
  '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz',
  21,
);
