import type { ScreenProps } from '../../../parts/loaded.tsx';
import { whereOf } from '../where.ts';

export function TutorHomework({ detail }: ScreenProps) {
  return <p>{whereOf(detail).at}</p>;
}
