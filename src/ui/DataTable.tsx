import type { ReactNode } from 'react';

export interface Column<RowData> {
  readonly id: string;
  readonly header: ReactNode;
  /** Right-aligned, in the number face. */
  readonly numeric?: boolean;
  readonly cell: (row: RowData, index: number) => ReactNode;
}

export interface DataTableProps<RowData> {
  readonly caption: string;
  /** Keep the caption for screen readers only, when a heading already says it. */
  readonly captionHidden?: boolean;
  readonly columns: readonly Column<RowData>[];
  readonly rows: readonly RowData[];
  readonly rowKey: (row: RowData, index: number) => string;
  readonly marked?: (row: RowData, index: number) => boolean;
}

/** A plain table with ruled lines that may scroll sideways on a narrow screen. */
export function DataTable<RowData>(props: DataTableProps<RowData>) {
  return (
    <div className="table-wrap">
      <table className="table">
        <caption className={props.captionHidden ? 'visually-hidden' : undefined}>{props.caption}</caption>
        <thead>
          <tr>
            {props.columns.map((column) => (
              <th key={column.id} scope="col" className={column.numeric ? 'numeric' : undefined}>
                {column.header}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {props.rows.map((row, index) => (
            <tr key={props.rowKey(row, index)} className={props.marked?.(row, index) ? 'marked' : undefined}>
              {props.columns.map((column) => (
                <td key={column.id} className={column.numeric ? 'numeric' : undefined}>
                  {column.cell(row, index)}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
