/** All rows in the order of their ids, read a page at a time, so that a long ledger never stands in memory whole. */
export function* byId<Row extends { readonly id: number }>(
  page: (after: number, limit: number) => readonly Row[],
  pageRows = 500,
): Generator<Row> {
  for (let after = Number.MIN_SAFE_INTEGER; ; ) {
    const rows = page(after, pageRows)
    yield* rows
    const last = rows.at(-1)
    if (!last || rows.length < pageRows) return
    after = last.id
  }
}
