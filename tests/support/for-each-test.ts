/**
 * What several tests look at, made when the first of them asks for it. Where code is changed to see whether tests notice, each test
 * makes its own: which tests reach a place is known by what runs within them.
 */
export function forEachTest<T>(make: () => T): () => T {
  let made: { readonly value: T } | undefined;
  return () => {
    if (process.env['MUTANTS_TESTS'] !== undefined) return make();
    made ??= { value: make() };
    return made.value;
  };
}
