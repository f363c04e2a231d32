/** What a designation is called on the drawing. */
export type Rename = (designation: string) => string;

export const plainLetters: Rename = (designation) => designation;
