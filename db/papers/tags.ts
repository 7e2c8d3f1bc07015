import { repairCode } from '../../core/papers/repair-code.ts'
import type { PaperTag, TagsContents } from '../../core/papers/working.ts'
import type { Read } from '../file/ledger.ts'
import { belongingsOf } from './belongings.ts'
import { paperBelonging, repairAndTop } from './top.ts'

/** Tags for the clock of a repair and for everything the shop holds with it. */
export function tagsContents(read: Read, repairId: number, at: string): TagsContents {
  const { repair, top } = repairAndTop(read, repairId, at)
  const parts = belongingsOf(read, repair.id)
    .filter(({ custody }) => custody === 'received')
    .map((row): PaperTag => {
      const { custody: _, tag = '', ...thing } = paperBelonging(row)
      return { part: { ...thing, tag } }
    })
  return { ...top, kind: 'tags', tags: [{}, ...parts], qr: repairCode(repair) }
}
