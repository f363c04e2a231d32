/** What stands in the place of the page as long as it hasn't been built; with its elements, as HTML. */
export const pageMissing = {
  title: 'Polewise: the page has not been built',
  heading: 'The page has not been built',
  paragraphs: [
    'The server runs and its store is open; only the page is missing.',
    'Build it with <code>npm run build</code> in the folder of the program, then start the server again.',
    'Until then <code>polewise drill</code> practises in the terminal.',
  ],
};
