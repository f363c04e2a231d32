/** Whether names can be taken for one another: their skeletons are the same (Unicode Technical Standard 39, section 4). */
import { rectifyConfusion } from 'unicode-confusables';

/** Letters that look alike, of whatever script, become the same; capitals and spaces don't count here. */
const skeletonOf = (name: string): string =>
  rectifyConfusion(
    name
      .normalize('NFD')
      .toLowerCase()
      .replace(/[\s\p{Default_Ignorable_Code_Point}]/gu, ''),
  )
    .normalize('NFD')
    .toLowerCase();

/** Names by how they look. */
export class Names {
  private readonly bySkeleton = new Map<string, Set<string>>();

  constructor(names: Iterable<string> = []) {
    for (const name of names) this.add(name);
  }

  add(name: string): void {
    const skeleton = skeletonOf(name);
    const known = this.bySkeleton.get(skeleton);
    if (known) known.add(name);
    else this.bySkeleton.set(skeleton, new Set([name]));
  }

  /** One that this can be taken for, and is not the same letter for letter. */
  alike(name: string): string | undefined {
    return [...(this.bySkeleton.get(skeletonOf(name)) ?? [])].find((other) => other !== name);
  }

  has(name: string): boolean {
    return this.bySkeleton.get(skeletonOf(name))?.has(name) === true;
  }
}
