/** What a shape is drawn with. */
export type Ink =
  | 'wire'
  | 'symbol'
  | 'blade'
  | 'dashed'
  | 'solid'
  | 'dot'
  | 'frame'
  | 'frame-heavy'
  /** Energised conductors, and contacts and leads between them. */
  | 'live'
  | 'live-symbol'
  | 'live-blade'
  | 'live-dot'
  /** The path picked out, and its arrows. */
  | 'fed'
  | 'fed-arrow'
  /** The contact that stops it. */
  | 'stop'
  | 'stop-bar'
  /** The inside of what is lit or energised, and its rays. */
  | 'lit'
  | 'on-lit'
  | 'ray';
