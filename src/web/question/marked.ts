/** What stands there once a question is marked: fetched while the first one is read. */
export { Player } from '../parts/player.tsx';
export { Explained } from './explained.tsx';
