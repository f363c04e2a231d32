export { plansOf } from './of-device.ts';
export type { Actuator, Delay, Part, PartForm, Way, Winding } from './part.ts';
export { isLoad, isPolyphase, isPower, poleMechanism } from './part.ts';
export { footOfJoined, type Run, type RunPart } from './runs.ts';
export { fellowsOf, findFellows, type Survey, survey } from './survey.ts';
