/** The part of logic-solver 2 that the tests use; the package brings no types. */
declare module 'logic-solver' {
  namespace Logic {
    /** The name of a variable, or a formula made by one of the functions. */
    type Formula = string | object;
    interface Solution {
      /** The variables and their values. */
      getMap(): Record<string, boolean>;
    }
    class Solver {
      require(...formulas: Formula[]): void;
      solve(): Solution | null;
    }
    function and(...parts: Formula[]): Formula;
    function or(...parts: Formula[]): Formula;
    function not(part: Formula): Formula;
    function equiv(one: Formula, other: Formula): Formula;
  }
  export default Logic;
}
