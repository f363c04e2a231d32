import type { ComponentChildren } from 'preact';
import { Schedule } from '../../../parts/schedule.tsx';
import type { Written } from '../../../parts/written.tsx';
import { Grid } from '../parts/grid.tsx';
import { ShareCell, ShareLegend } from '../parts/share-cell.tsx';

interface Props {
  readonly caption: string;
  /** Of the first column. */
  readonly rows: string;
  readonly columns: readonly { readonly key: string; readonly title: string; readonly written?: Written }[];
  readonly lines: readonly {
    readonly key: string;
    readonly name: ComponentChildren;
    readonly shares: readonly (number | null)[];
  }[];
  /** A last line over all. */
  readonly mean?: { readonly name: string; readonly shares: readonly (number | null)[] };
}

/** Shares as a ruled schedule: people down, what is measured across, with its names on end so that many fit. */
export function SkillGrid({ caption, rows, columns, lines, mean }: Props) {
  return (
    <>
      <Grid label={caption}>
        <Schedule
          class="schedule grid"
          caption={caption}
          rows={lines}
          keyOf={({ key }) => key}
          columns={[
            { title: rows, head: true, cell: ({ name }) => name },
            ...columns.map(({ title, written }, at) => ({
              title,
              ...(written ? { written } : {}),
              onEnd: true,
              own: ({ shares }: { shares: readonly (number | null)[] }) => (
                <ShareCell share={shares[at] ?? null} />
              ),
            })),
          ]}
          foot={
            mean && (
              <tr>
                <th scope="row">{mean.name}</th>
                {columns.map((column, at) => (
                  <ShareCell key={column.key} share={mean.shares[at] ?? null} />
                ))}
              </tr>
            )
          }
        />
      </Grid>
      <ShareLegend />
    </>
  );
}
