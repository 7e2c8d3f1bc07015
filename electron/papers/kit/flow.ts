import type { Sheet } from './sheet.ts'

/** A piece of a paper that is never divided between pages. */
export interface Block {
  /** Points. */
  readonly height: number
  /** Not to be parted from the block after it. */
  readonly keep?: boolean
  /** False where the margin rule is not drawn beside it. */
  readonly ruled?: boolean
  readonly draw: (y: number) => void
}

/** Blocks that belong together in the tree of elements. */
export interface Section {
  /** The element around them, where they need one: `Table`. */
  readonly tag?: 'Table'
  /** Begins on a page of its own. */
  readonly fresh?: boolean
  /** Drawn again at the head of each page the section runs on to. */
  readonly running?: Block
  readonly blocks: readonly Block[]
}

/** Section without an element or a running head. */
export const section = (...blocks: readonly Block[]): Section => ({ blocks })

/** Empty room, in points. */
export const space = (height: number): Block => ({ height, draw: () => {} })

/** Several blocks as one that is not divided. */
export const stacked = (blocks: readonly Block[]): Block => ({
  height: heightOf(blocks),
  draw: y => {
    let at = y
    for (const block of blocks) {
      block.draw(at)
      at += block.height
    }
  },
})

/** Stacks of blocks side by side, read one after the other. */
export const beside = (...stacks: readonly (readonly Block[])[]): Block => {
  const columns = stacks.map(stacked)
  return {
    height: Math.max(...columns.map(column => column.height)),
    draw: y => {
      for (const column of columns) column.draw(y)
    },
  }
}

/** Height of blocks one under the other, in points. */
export const heightOf = (blocks: readonly Block[]): number =>
  blocks.reduce((sum, block) => sum + block.height, 0)

/** Lays the sections down the pages from the sheet's cursor, turning the page where a block does not fit. */
export function flow(sheet: Sheet, sections: readonly Section[]): void {
  const all = sections.flatMap(each => each.blocks)
  let index = 0
  for (const each of sections) {
    if (each.fresh && !sheet.blank) sheet.turn()
    const lay = () => {
      each.blocks.forEach((block, i) => {
        if (!fits(sheet, needed(all, index, sheet.capacity))) turn(sheet, i > 0 ? each : undefined)
        place(sheet, block)
        index += 1
      })
    }
    if (each.tag) sheet.within(each.tag, lay)
    else lay()
  }
}

/** Lays a slip to be torn off: whole at the foot of the page where it fits, else from the top of the next. */
export function flowSlip(sheet: Sheet, cut: Block, sections: readonly Section[]): void {
  const height = heightOf([cut, ...sections.flatMap(each => each.blocks)])
  if (!fits(sheet, height)) sheet.turn()
  else {
    sheet.y = sheet.bottom - height
    place(sheet, cut)
  }
  flow(sheet, sections)
}

/** A hundredth of a point is lost in sums of heights and seen by nobody. */
const fits = (sheet: Sheet, height: number): boolean => sheet.y + height <= sheet.bottom + 0.01

/** The room block `index` asks for together with those it must not be parted from. */
function needed(all: readonly Block[], index: number, capacity: number): number {
  let height = 0
  for (let i = index; i < all.length; i++) {
    const block = all[i]
    height += block?.height ?? 0
    if (!block?.keep) break
  }
  return height <= capacity ? height : (all[index]?.height ?? 0)
}

function turn(sheet: Sheet, running: Section | undefined): void {
  sheet.turn()
  const head = running?.running
  if (head) sheet.repeat(() => place(sheet, head))
}

function place(sheet: Sheet, block: Block): void {
  block.draw(sheet.y)
  if (block.ruled !== false) sheet.ruleBeside(sheet.y, sheet.y + block.height)
  sheet.y += block.height
}
