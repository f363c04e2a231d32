import type { ComponentChildren, VNode } from 'preact';
import { Fragment } from 'preact';
import type { Written } from './written.tsx';

/** What stands over one column of a schedule. */
interface Heading {
  readonly title: string;
  /** Its title is only read out. */
  readonly away?: boolean;
  /** Its title stands on end, so that many fit. */
  readonly onEnd?: boolean;
  /** Left out where there is little room. */
  readonly minor?: boolean;
  /** What its title is like: `number`. */
  readonly titled?: string;
  readonly written?: Written;
}

/** A column of which every cell is made the same way. */
export interface Column<R> extends Heading {
  /** Names its row. */
  readonly head?: boolean;
  /** What its cells are like: `number`, `code`. */
  readonly like?: string;
  /** Its title stands beside each cell, where the schedule is folded on a phone. */
  readonly beside?: boolean;
  readonly cell: (row: R, at: number) => ComponentChildren;
}

/** A column whose cells are told apart by what stands in them. */
interface OwnColumn<R> extends Heading {
  readonly own: (row: R, at: number) => VNode;
}

interface Props<R> {
  /** `schedule` in the homework, `roll` for people and classes; `folds` on a phone. */
  readonly class: string;
  readonly caption?: ComponentChildren;
  readonly captionAway?: boolean;
  readonly columns: readonly (Column<R> | OwnColumn<R>)[];
  readonly rows: readonly R[];
  readonly keyOf: (row: R, at: number) => string | number;
  readonly like?: (row: R, at: number) => string | undefined;
  /** What is opened under a row, where something is. */
  readonly under?: (row: R) => { readonly id: string; readonly what: ComponentChildren } | undefined;
  /** A last row over all. */
  readonly foot?: VNode | false | undefined;
}

const classes = (...names: readonly (string | false | undefined)[]): string | undefined =>
  names.filter(Boolean).join(' ') || undefined;

function Title({ column: { title, away, onEnd, minor, titled, written } }: { column: Heading }) {
  return (
    <th scope="col" class={classes(titled, onEnd && 'on-end', minor && 'minor')} {...written}>
      {away ? <span class="away">{title}</span> : onEnd ? <span>{title}</span> : title}
    </th>
  );
}

function Cell<R>({ column, row, at }: { column: Column<R>; row: R; at: number }) {
  const { title, head, like, minor, beside, cell } = column;
  return head ? (
    <th scope="row">{cell(row, at)}</th>
  ) : (
    <td class={classes(like, minor && 'minor')} data-of={beside ? title : undefined}>
      {cell(row, at)}
    </td>
  );
}

/** Rows of the same kind, ruled, with a title over each column. */
export function Schedule<R>({ columns, rows, keyOf, like, under, foot, ...props }: Props<R>) {
  return (
    <table class={props.class}>
      {props.caption && <caption class={props.captionAway ? 'away' : undefined}>{props.caption}</caption>}
      <thead>
        <tr>
          {columns.map((column, at) => (
            <Title key={`${at} ${column.title}`} column={column} />
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row, at) => {
          const opened = under?.(row);
          return (
            <Fragment key={keyOf(row, at)}>
              <tr class={like?.(row, at)}>
                {columns.map((column, place) =>
                  'own' in column ? (
                    <Fragment key={`${place} ${column.title}`}>{column.own(row, at)}</Fragment>
                  ) : (
                    <Cell key={`${place} ${column.title}`} column={column} row={row} at={at} />
                  ),
                )}
              </tr>
              {opened && (
                <tr id={opened.id} class="opened">
                  <td colSpan={columns.length}>{opened.what}</td>
                </tr>
              )}
            </Fragment>
          );
        })}
      </tbody>
      {foot && <tfoot>{foot}</tfoot>}
    </table>
  );
}
