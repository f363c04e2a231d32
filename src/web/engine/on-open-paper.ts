/** The circuit stands on a paper that its learner can still work on: it is neither marked nor run. */
export class OnOpenPaper extends RangeError {
  /** Its fingerprint. */
  readonly circuit: string;

  constructor(circuit: string) {
    super(circuit);
    this.circuit = circuit;
  }
}
