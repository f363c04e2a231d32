/** How a kind of device is drawn, to all of the drawing that doesn't know kinds one by one. */
import type { DeviceKind, DeviceOf } from '../../../shared/circuit.ts';
import type { Anatomy, Contact } from '../../circuit/anatomy/index.ts';
import type { RatingSaid } from '../../words/index.ts';
import type { Actuator, Delay, PartForm, PartPlan } from '../parts/part.ts';

export interface DrawnTraits<K extends DeviceKind> {
  /** First letter of its designation; by old practice and after IEC 81346-2 where they differ. */
  letter(device: DeviceOf<K>, letters: 'old' | 'new'): string;
  readonly actuator?: Actuator;
  readonly delay?: Delay;
  /** What its loads look like, where they are no coils. */
  readonly load?: PartForm;
  /** The whole of it, where it is drawn as one part and not one for each load and pole. */
  whole?(anatomy: Anatomy): PartPlan;
  /** What its contacts look like, where they are no plain ones. */
  pole?(contact: Contact): PartForm | undefined;
  /** What is needed to tell what it does: a timer's time, a lamp's colour, a fuse's rating. */
  rating?(device: DeviceOf<K>): RatingSaid | undefined;
  /** The names of its positions, where its contacts name those they are closed in. */
  positions?(device: DeviceOf<K>): readonly string[];
  /** What stands at one of its poles alone: a point's text. */
  poleText?(device: DeviceOf<K>, legs: readonly Contact[]): string | undefined;
}
