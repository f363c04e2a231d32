/** What the server tells those who ask it. */
import { store } from '../store.ts';
import { troubles } from './troubles.ts';

export const server = { store, troubles };

export type ServerWords = typeof server;
