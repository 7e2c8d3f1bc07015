import { and, asc, desc, eq, isNull, type SQL, sql } from 'drizzle-orm'
import { contactMeant, contactText } from '../../core/owner/contact.ts'
import { typedOrScanned } from '../../core/papers/repair-code.ts'
import { plainWords } from '../../core/register/likely.ts'
import { fewestLetters, mayBegin } from '../../core/register/near-word.ts'
import type { Stage } from '../../core/standing/stages.ts'
import type { Form } from '../../core/vocabulary/clock.ts'
import type { Read } from '../file/ledger.ts'
import { plainMark } from '../rows/find-entries.ts'
import { amongAsked, question, these } from '../rows/question.ts'
import * as s from '../schema/index.ts'

/** One thing found. The words around the codes are the page's. */
export interface Found {
  readonly kind: 'owner' | 'clock' | 'repair' | 'paper'
  readonly id: number
  /** A repair's or a paper's number. */
  readonly number: string | null
  readonly name: string | null
  readonly form: Form | null
  readonly maker: string | null
  readonly serial: string | null
  readonly stage: Stage | null
  readonly paperKind: string | null
  readonly address: string | null
  /** Of an owner: the phone or e-mail that was typed, else the preferred one. */
  readonly contact: string | null
}

/** As many as a person looks through at a glance; further letters narrow what is found. */
export const mostFound = 8

/** The typed words as FTS5 prefix terms, all of which must be there; undefined when nothing is left of them. */
export function wordsQuery(text: string): string | undefined {
  const words = wordsOf(text)
  return words.length > 0 ? words.map(begins).join(' ') : undefined
}

const wordsOf = (text: string): string[] => text.match(/[\p{L}\p{N}]+/gu) ?? []
const begins = (word: string): string => `"${word}"*`

/** So many words of the index stand in for one that was mistyped. */
const mostNear = 12

/** The same where each word may have one slip in it; undefined where no word of the index is near. */
function nearQuery(read: Read, text: string): string | undefined {
  const terms = wordsOf(text).map(word => {
    const near = nearWords(read, plainWords(word).join(''))
    return near.length > 0
      ? `(${[begins(word), ...near.map(term => `"${term}"`)].join(' OR ')})`
      : begins(word)
  })
  return terms.some(term => term.startsWith('(')) ? terms.join(' AND ') : undefined
}

/** Words of the index that the letters may stand for; numbers are never guessed at. */
const nearWords = (read: Read, word: string): string[] =>
  word.length < fewestLetters || !/\p{L}/u.test(word)
    ? []
    : read
        .all<{ term: string }>(sql`SELECT term FROM find_vocabulary WHERE length(term) >= ${word.length - 1}`)
        .map(({ term }) => term)
        .filter(term => mayBegin(word, term))
        .slice(0, mostNear)

/** Digits or a serial from anywhere inside: a phrase of the trigram index, which needs three characters. */
export function marksQuery(text: string): string | undefined {
  const mark = plainMark(text)
  return [...mark].length >= 3 ? `"${mark}"` : undefined
}

function entryIds(read: Read, text: string, kind: Found['kind'] | null): number[] {
  const words = wordsQuery(text)
  const marks = marksQuery(text)
  const ofKind = kind === null ? sql`` : sql`AND rowid IN (SELECT id FROM find_entries WHERE kind = ${kind})`
  // Newest first, by row number: ranking by bm25 costs more than a key press allows.
  const byWords = words ? matching(read, words, ofKind) : []
  const byMarks = marks
    ? read.all<{ id: number }>(
        sql`SELECT rowid AS id FROM find_marks WHERE find_marks MATCH ${marks} ${ofKind} ORDER BY rowid DESC LIMIT ${mostFound}`,
      )
    : []
  const exact = [...new Set([...byWords, ...byMarks.map(row => row.id)])].slice(0, mostFound)
  const near = exact.length > 0 ? undefined : nearQuery(read, text)
  return near ? matching(read, near, ofKind) : exact
}

const matching = (read: Read, query: string, ofKind: SQL): number[] =>
  read
    .all<{ id: number }>(
      sql`SELECT rowid AS id FROM find_words WHERE find_words MATCH ${query} ${ofKind} ORDER BY rowid DESC LIMIT ${mostFound}`,
    )
    .map(row => row.id)

/** A repair by its very number stands first, whatever else matches. */
function exactRepair(read: Read, text: string): number[] {
  const number = Number(text)
  if (!Number.isSafeInteger(number) || number < 1) return []
  return read
    .all<{ id: number }>(
      sql`SELECT e.id FROM repairs r JOIN find_entries e ON e.kind = 'repair' AND e.subject_id = r.id WHERE r.number = ${number}`,
    )
    .map(row => row.id)
}

const contactsFound = question(read =>
  read
    .select({
      ownerId: s.ownerContacts.ownerId,
      kind: s.ownerContacts.kind,
      value: s.ownerContacts.value,
      preferred: s.ownerContacts.preferred,
    })
    .from(s.ownerContacts)
    .innerJoin(s.findEntries, eq(s.findEntries.subjectId, s.ownerContacts.ownerId))
    .where(
      and(
        amongAsked(s.findEntries.id),
        eq(s.findEntries.kind, 'owner'),
        isNull(s.ownerContacts.struckReason),
      ),
    )
    .orderBy(desc(s.ownerContacts.preferred), asc(s.ownerContacts.id)),
)

/** What to tell an owner found by: the contact that was typed, else the preferred one. */
function contactShown(read: Read, entryIds: readonly number[]) {
  const byOwner = Map.groupBy(contactsFound(read).all(these(entryIds)), ({ ownerId }) => ownerId)
  return ({ kind, id }: Pick<Found, 'kind' | 'id'>, typed: string): string | null => {
    const contacts = kind === 'owner' ? (byOwner.get(id) ?? []) : []
    const shown = contactMeant(typed, contacts) ?? contacts[0]
    return shown ? contactText(shown) : null
  }
}

/**
 * What the typed text finds among owners, clocks, repairs and papers: beginnings of words with accents folded, and digits of a phone
 * or a serial from anywhere inside, of one kind where asked; where nothing is found, words one slip away. At most `mostFound`, an exact repair number first. The text of a claim check's QR code finds its repair.
 */
export function found(read: Read, typed: string, kind: Found['kind'] | null = null): Found[] {
  const text = typedOrScanned(typed)
  const ids = [
    ...new Set([
      ...(kind === null || kind === 'repair' ? exactRepair(read, text) : []),
      ...entryIds(read, text, kind),
    ]),
  ]
  if (ids.length === 0) return []
  const contactOf = contactShown(read, ids)
  const rows = read.all<Omit<Found, 'contact'> & { entry: number }>(sql`
    SELECT e.id AS entry, e.kind, e.subject_id AS id,
      coalesce(CAST(r.number AS TEXT), d.number) AS number,
      coalesce(o.name, ro.name, dn.name, cn.name) AS name,
      o.address AS address,
      coalesce(c.form, rc.form) AS form, coalesce(c.maker, rc.maker) AS maker, coalesce(c.serial, rc.serial) AS serial,
      r.stage AS stage, d.kind AS paperKind
    FROM find_entries e
    LEFT JOIN owners o ON e.kind = 'owner' AND o.id = e.subject_id
    LEFT JOIN clocks c ON e.kind = 'clock' AND c.id = e.subject_id
    LEFT JOIN clock_owners co ON co.clock_id = c.id AND co.until_at IS NULL
    LEFT JOIN owners cn ON cn.id = co.owner_id
    LEFT JOIN repairs r ON e.kind = 'repair' AND r.id = e.subject_id
    LEFT JOIN owners ro ON ro.id = r.owner_id
    LEFT JOIN clocks rc ON rc.id = r.clock_id
    LEFT JOIN documents d ON e.kind = 'paper' AND d.id = e.subject_id
    LEFT JOIN owners dn ON dn.id = d.owner_id
    WHERE e.id IN (${sql.join(
      ids.map(id => sql`${id}`),
      sql`, `,
    )})`)
  const place = new Map(ids.map((id, index) => [id, index]))
  return rows
    .sort((a, b) => (place.get(a.entry) ?? mostFound) - (place.get(b.entry) ?? mostFound))
    .map(({ entry: _, ...row }) => ({ ...row, contact: contactOf(row, text) }))
}
