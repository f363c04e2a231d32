/** A name for a file that every system takes: of the class's name only letters, digits and hyphens. */
export const fileName = (title: string, rest: string): string => {
  const plain = title
    .normalize('NFKD')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .toLowerCase()
    .slice(0, 40);
  return plain ? `${plain}-${rest}` : rest;
};
