/** Where everything is kept. */
export const store = {
  twoStores: {
    wrong: 'DATABASE_URL and --data name two different stores.',
    right: 'Leave out --data, or run it with DATABASE_URL empty.',
  },
  noAddress: {
    wrong: 'DATABASE_URL is not the address of a PostgreSQL database.',
    right: 'Such as postgres://polewise@localhost:5432/polewise; or leave it empty for a store in a file.',
  },
  dataIsAFile: {
    wrong: (path: string) => `--data ${path} is a file.`,
    right: 'Name the folder that holds practice.sqlite.',
  },
  theDatabase: 'the database of DATABASE_URL',
  failed: ({ where, told }: { where: string; told: string }) => `${where}: ${told}`,
  failedWith: ({ where, told, detail }: { where: string; told: string; detail: string }) =>
    `${where}: ${told} (${detail})`,
};
