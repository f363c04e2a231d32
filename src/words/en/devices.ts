/** What each kind of device is called, and what a colour. */
export const deviceKinds = {
  relay: 'relay',
  contactor: 'contactor',
  'on-delay': 'on-delay timer',
  'off-delay': 'off-delay timer',
  'supplied-off-delay': 'off-delay timer with control input',
  flasher: 'flasher',
  'latching-relay': 'latching relay',
  'push-button': 'push-button',
  'emergency-stop': 'emergency stop',
  selector: 'selector',
  'field-contact': 'field contact',
  'limit-switch': 'limit switch',
  'float-switch': 'float switch',
  overload: 'overload relay',
  fuse: 'fuse',
  breaker: 'circuit-breaker',
  isolator: 'isolator',
  lamp: 'lamp',
  sounder: 'sounder',
  valve: 'solenoid valve',
  motor: 'three-phase motor',
  inputs: 'controller',
  outputs: 'controller',
  terminals: 'terminal',
};

/** Of lamps and push-buttons. */
export const colours = {
  red: 'red',
  yellow: 'yellow',
  amber: 'amber',
  green: 'green',
  blue: 'blue',
  white: 'white',
  grey: 'grey',
  black: 'black',
};
