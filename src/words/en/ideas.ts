/** Wrong ideas, told to the learner whose answer follows from one of them, and what to do instead. */

export interface Idea {
  /** In one plain sentence. */
  readonly idea: string;
  /** What to do instead, in one or two sentences. */
  readonly advice: string;
}

export const ideas = {
  'nothing-moves': {
    idea: 'You read the contacts as they are drawn, although their relays have operated.',
    advice:
      'The drawing shows everything at rest. Work out first which coils are energised, then move all their contacts, then follow the current.',
  },
  'make-for-break': {
    idea: 'You read the make contacts as break contacts and the break contacts as make contacts.',
    advice:
      'Look at the second figure of the terminal numbers: 1-2 is a break contact, 3-4 a make; on a changeover 1 is the common, 2 the break leg, 4 the make leg.',
  },
  'break-never-opens': {
    idea: 'You took "normally closed" to mean always closed: the break contacts stayed closed when their relay operated.',
    advice:
      '"Normally" means at rest. A break contact is closed while its coil is de-energised and opens when the relay operates.',
  },
  'both-legs-closed': {
    idea: 'You let both legs of a changeover contact carry current at the same time.',
    advice:
      'A changeover joins its common to one leg at a time: to the break leg at rest, to the make leg when the relay has operated. On the way it joins neither.',
  },
  'open-contact-followed': {
    idea: 'You followed the current through make contacts that are still open.',
    advice:
      'Before going through a make contact, find its coil: the contact is closed only when that relay has operated.',
  },
  'blocking-contact-overlooked': {
    idea: 'You took a load to be fed because one contact on its way was closed, and passed over another in series that is open.',
    advice:
      'Contacts in series must all be closed. Go along the whole path, contact by contact, and stop at the first that is open: an interlock of another relay, a limit or a trip as much as the button.',
  },
  'second-relay-as-drawn': {
    idea: 'You stopped after the first relay: a relay that is fed through its contacts was left where it is drawn.',
    advice:
      'When a relay has moved, look for coils that its contacts feed, move those relays too, and go on until nothing changes.',
  },
  'contacts-beside-coil': {
    idea: 'You moved only the contacts on the sheet of their coil; those of the same relay on other sheets stayed at rest.',
    advice:
      'The coil moves every contact that carries its designation, on whatever sheet it is drawn. The list under the coil says where they are.',
  },
  'first-pole-only': {
    idea: 'You moved only the first pole of a relay and left its other poles at rest.',
    advice: 'All poles of a relay move together with its coil: 11-12-14, 21-22-24 and so on.',
  },
  'seal-forgotten': {
    idea: 'You forgot the seal-in: you let the relay release when the button was let go.',
    advice:
      "Look for the relay's own make contact beside the start button. Once the relay has operated, that contact feeds its coil until something else in the path opens.",
  },
  'seal-where-none': {
    idea: 'You let the relay hold itself after the button was let go, although nothing seals it in.',
    advice:
      'A relay stays operated only while its coil is fed. Without a make contact of its own across the button, letting go releases it.',
  },
  'remembers-over-loss': {
    idea: 'You let the relays come back in when the supply returned, as they were before it was lost.',
    advice:
      'Without supply every relay releases, and its seal-in opens with it. When the supply returns, begin as drawn: only what is fed then operates. A latching relay alone stays where it was.',
  },
  'timers-instant': {
    idea: 'You let a timer move its contacts at once, as a plain relay does.',
    advice:
      "Look at the timer's kind and time. An on-delay moves its contacts when its coil has been energised for that long; an off-delay lets them go that long after the coil was switched off.",
  },
  'delays-exchanged': {
    idea: 'You took an on-delay for an off-delay, or an off-delay for an on-delay.',
    advice:
      'An on-delay waits before it operates and releases at once. An off-delay operates at once and waits before it releases.',
  },
  'delay-adds-up': {
    idea: 'You let a timer go on after an interruption from where it had stopped, and added up its times.',
    advice:
      'An interruption starts the time afresh: an on-delay counts from when its coil was last energised, an off-delay from when it was last switched off.',
  },
  'latch-drops-out': {
    idea: 'You let a latching relay drop out as soon as its coil lost its voltage.',
    advice:
      'A latching relay stays where its last pulse put it, even without supply. Only its reset coil (B1-B2) brings it back.',
  },
  'one-supply': {
    idea: 'You took everything to be on one supply, and let all of it go dead together.',
    advice:
      'The poles of a relay are separate from one another and may belong to different supplies. Trace each load back to its own supply before calling it dead.',
  },
  'line-side-dead': {
    idea: 'You took the incoming side of an open isolator or breaker for dead.',
    advice:
      'Opening it cuts off what comes after it. The terminals on the side of the supply stay live until the supply itself is off.',
  },
  'common-reference': {
    idea: 'You measured between two isolated supplies as if they had a point in common.',
    advice:
      'A meter reads a difference between two points of one supply. Two isolated supplies have no common point, so between them it shows nothing.',
  },
  'return-ignored': {
    idea: 'You followed the current to the load and not back from it: the return side is interrupted.',
    advice:
      'A current path goes from one pole of the supply through the load to the other pole. Follow the return as carefully as the feed.',
  },
  'input-inverted': {
    idea: 'You read a break field contact inverted, as if the controller turned its signal round.',
    advice:
      'The controller sees voltage or none. A break contact at rest is closed, so its input reads 1, and 0 when the contact is actuated; what that means is up to the program.',
  },
  'normal-is-running': {
    idea: 'You left the field contacts as drawn, as if "normal" meant the plant running as it should.',
    advice:
      'A contact is drawn unactuated: no pressure, no flow, nothing in its way. Ask what the plant does to the contact, move it, and only then follow the current.',
  },
};
export type IdeaWords = typeof ideas;
