export { findNets, type Net, type Wiring } from './nets.ts';
export type { Actuator, Delay, Part, PartForm, Spot, Way } from './part.ts';
export { isLoad, poleMechanism } from './part.ts';
export { findRuns, type Poles, polesOf, type Run, type RunPart } from './runs.ts';
export { findStops } from './stops.ts';
export { type Survey, survey } from './survey.ts';
