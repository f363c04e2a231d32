/**
 * A drawing without a format: what is where, in units of the profile it was laid out for. Everything that a picture, a
 * paper or a terminal shows comes from this, and the circuit can be read back from it.
 */
import type { Actuator, Delay, PartForm, Way, Winding } from '../parts/index.ts';

export type TextRole =
  /** A reference designation. */
  | 'name'
  /** What a device is for, its rating. */
  | 'text'
  /** A terminal's number. */
  | 'number'
  /** Where something is: `/2.4` is sheet 2, path 4. */
  | 'place'
  /** A conductor's name where it goes on elsewhere. */
  | 'mark'
  /** A supply pole with its voltage. */
  | 'rail'
  /** The number of a current path. */
  | 'path'
  /** A coil's list of contacts. */
  | 'list'
  /** Title block and headings. */
  | 'title';

export interface SceneText {
  readonly role: TextRole;
  readonly text: string;
  /** Its box. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly anchor: 'start' | 'middle' | 'end';
  /** What it belongs to: a part's id, or a conductor's. */
  readonly of: string;
}

export interface ScenePort {
  /** `-K3:11`. */
  readonly terminal: string;
  readonly x: number;
  readonly y: number;
}

export interface SceneSymbol {
  /** `-K3:11`: the device and the part's first terminal. */
  readonly id: string;
  readonly device: string;
  /** Where it stands, as other places refer to it: `/2.4` is sheet 2, path 4. */
  readonly place: string;
  readonly form: PartForm;
  /** Equal looks are equal drawings, but for what is turned over or moved. */
  readonly look: string;
  readonly flipped: boolean;
  readonly actuator?: Actuator;
  readonly delay?: Delay;
  readonly winding?: Winding;
  /** Of a coil: its name in what is read off a circuit, `-K3`, `-K7:B1`. */
  readonly coil?: string;
  readonly mechanism?: string;
  /** The ways through a contact, with the positions of its mechanism in which each is closed. */
  readonly ways: readonly Way[];
  /** Its middle line, and its box. */
  readonly x: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** In the order of the part's spots; a spot that nothing is wired to has its place too. */
  readonly ports: readonly ScenePort[];
}

/** A straight piece of a conductor, horizontal or vertical. */
export interface Wire {
  readonly net: number;
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

export interface Dot {
  readonly net: number;
  readonly x: number;
  readonly y: number;
}

/** The end of a conductor that goes on elsewhere, or the beginning of a supply's. */
export interface Mark {
  readonly id: string;
  readonly net: number;
  readonly kind: 'supply' | 'goes-on';
  /** What the conductor is called: equal names are one conductor. */
  readonly names: readonly string[];
  readonly side: 'left' | 'right';
  readonly x: number;
  readonly y: number;
}

/** The dashed line between contacts that one mechanism moves. */
export interface Link {
  readonly mechanism: string;
  /** The symbols that it joins, left and right. */
  readonly from: string;
  readonly to: string;
  readonly x1: number;
  readonly x2: number;
  readonly y: number;
}

export interface SceneSheet {
  /** The circuit's sheet and, where it takes several, which piece of it. */
  readonly sheet: number;
  readonly piece: number;
  readonly pieces: number;
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly symbols: readonly SceneSymbol[];
  readonly wires: readonly Wire[];
  readonly dots: readonly Dot[];
  readonly marks: readonly Mark[];
  readonly links: readonly Link[];
  readonly texts: readonly SceneText[];
  /** Lines of the frame and the title block: no part of the circuit. */
  readonly frame: readonly FrameLine[];
}

export interface FrameLine {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly heavy: boolean;
}

export interface Scene {
  readonly profile: string;
  readonly title: string;
  /** By a wire's net: every terminal on that conductor, on whichever sheet. */
  readonly conductors: readonly (readonly string[])[];
  readonly sheets: readonly SceneSheet[];
}
