/** What a part is called in a sentence, with the terminals a path passes. */
import type { Device } from '../../../shared/circuit.ts';
import { timeInWords } from '../../circuit/index.ts';
import type { Rename } from '../letters.ts';
import type { Part } from '../parts/index.ts';

function kindWords(device: Device): string {
  switch (device.kind) {
    case 'relay':
      return 'relay';
    case 'contactor':
      return 'contactor';
    case 'on-delay':
      return 'on-delay timer';
    case 'off-delay':
      return 'off-delay timer';
    case 'flasher':
      return 'flasher';
    case 'latching-relay':
      return 'latching relay';
    case 'push-button':
      return device.colour ? `${device.colour} push-button` : 'push-button';
    case 'emergency-stop':
      return 'emergency stop';
    case 'selector':
      return 'selector';
    case 'field-contact':
      return 'field contact';
    case 'limit-switch':
      return 'limit switch';
    case 'float-switch':
      return 'float switch';
    case 'overload':
      return 'overload relay';
    case 'fuse':
      return device.amps ? `${device.amps} A fuse` : 'fuse';
    case 'breaker':
      return device.amps ? `${device.amps} A circuit-breaker` : 'circuit-breaker';
    case 'isolator':
      return 'isolator';
    case 'lamp':
      return device.colour ? `${device.colour} lamp` : 'lamp';
    case 'sounder':
      return 'sounder';
    case 'valve':
      return 'solenoid valve';
    case 'motor':
      return 'three-phase motor';
    case 'inputs':
      return 'controller';
    case 'outputs':
      return 'controller';
    case 'terminals':
      return 'terminal';
  }
}

function timeOf(device: Device): string {
  switch (device.kind) {
    case 'on-delay':
    case 'off-delay':
      return ` (${timeInWords(device.seconds)})`;
    case 'flasher':
      return ` (${timeInWords(device.on)} on, ${timeInWords(device.off)} off)`;
    default:
      return '';
  }
}

/** `relay -K3`, `field contact -B1 "Fan tripped"`, `on-delay timer -K4 (5 s)`. */
function deviceWords(device: Device, rename: Rename): string {
  const text = device.text ? ` "${device.text}"` : '';
  return `${kindWords(device)} ${rename(device.name)}${timeOf(device)}${text}`;
}

function contactWords({ form, delay, text, device }: Part): string {
  const late = delay === 'operate' ? 'late-operating ' : delay === 'release' ? 'late-releasing ' : '';
  const positions = device.kind === 'selector' && text ? ` (closed in ${text})` : '';
  switch (form) {
    case 'make':
      return `${late}make contact${positions}`;
    case 'break':
      return `${late}break contact${positions}`;
    case 'changeover':
      return `${late}changeover contact`;
    default:
      return 'pole';
  }
}

/** The part with the terminals at which a path comes in and goes on. */
export function partWords(part: Part, passed: string, rename: Rename): string {
  const device = deviceWords(part.device, rename);
  switch (part.form) {
    case 'make':
    case 'break':
    case 'changeover':
      return `${contactWords(part)} ${passed} of ${device}`;
    case 'main-make':
    case 'main-break':
    case 'breaker-pole':
    case 'isolator-pole':
    case 'heater':
      return `pole ${passed} of ${device}`;
    case 'fuse':
    case 'lamp':
    case 'sounder':
    case 'valve':
    case 'motor':
      return `${device}, ${passed}`;
    case 'coil':
      return `${part.latch ? `${part.latch} coil` : 'coil'} ${passed} of ${device}`;
    case 'input':
      return `input ${passed}${part.text ? ` "${part.text}"` : ''} of ${device}`;
    case 'output':
      return `output ${passed}${part.text ? ` "${part.text}"` : ''} of ${device}`;
    case 'common':
      return `common ${passed} of ${device}`;
    case 'terminal':
      return `terminal ${rename(part.device.name)}:${passed}`;
  }
}
