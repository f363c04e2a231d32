export { useAct } from '../../../parts/act.ts';
