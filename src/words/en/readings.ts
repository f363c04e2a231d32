/** How a relay stands, where a circuit is tried. */
export const readings = { operated: 'operated', atRest: 'at rest' };
