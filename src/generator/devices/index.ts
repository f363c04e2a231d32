/** What a family puts on its drawing: a supply, or a device of some kind. */
export { addButton, addEmergencyStop } from './buttons.ts';
export { addContactor } from './contactor.ts';
export { addInputs } from './controller.ts';
export { addMains, addMainsBreaker, addSource } from './feeding.ts';
export { addSensor } from './field-contacts.ts';
export { addLamp, addSounder, addValve } from './loads.ts';
export { addMotor } from './motor.ts';
export { addOverload } from './overload.ts';
export { addLatchingRelay, addRelay } from './relays.ts';
export { addSelector } from './selector.ts';
export { terminalRow } from './terminals.ts';
export { addFlasher, addOffDelay, addOnDelay, addSuppliedOffDelay } from './timers.ts';
