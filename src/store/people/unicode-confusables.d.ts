declare module 'unicode-confusables' {
  /** The text with every letter that Unicode lists as confusable replaced by the one it is confused with. */
  export function rectifyConfusion(text: string): string;
}
