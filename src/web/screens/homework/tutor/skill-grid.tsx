import type { ComponentChildren } from 'preact';
import { ShareCell, ShareLegend } from '../parts/share-cell.tsx';

interface Props {
  readonly caption: string;
  /** Of the first column. */
  readonly rows: string;
  readonly columns: readonly { readonly key: string; readonly title: string }[];
  readonly lines: readonly {
    readonly key: string;
    readonly name: ComponentChildren;
    readonly shares: readonly (number | null)[];
  }[];
  /** A last line over all. */
  readonly mean?: { readonly name: string; readonly shares: readonly (number | null)[] };
}

const REACHABLE = { tabIndex: 0 } as const;

/** Shares as a ruled schedule: people down, what is measured across, with its names on end so that many fit. */
export function SkillGrid({ caption, rows, columns, lines, mean }: Props) {
  return (
    <>
      <section class="grid-scroll" aria-label={caption} {...REACHABLE}>
        <table class="schedule grid">
          <caption>{caption}</caption>
          <thead>
            <tr>
              <th scope="col">{rows}</th>
              {columns.map(({ key, title }) => (
                <th key={key} scope="col" class="on-end">
                  <span>{title}</span>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {lines.map(({ key, name, shares }) => (
              <tr key={key}>
                <th scope="row">{name}</th>
                {columns.map((column, at) => (
                  <ShareCell key={column.key} share={shares[at] ?? null} />
                ))}
              </tr>
            ))}
          </tbody>
          {mean && (
            <tfoot>
              <tr>
                <th scope="row">{mean.name}</th>
                {columns.map((column, at) => (
                  <ShareCell key={column.key} share={mean.shares[at] ?? null} />
                ))}
              </tr>
            </tfoot>
          )}
        </table>
      </section>
      <ShareLegend />
    </>
  );
}
