import type { AnyKind } from '../../papers/kinds.ts'
import { type PaperSize, sizesOf } from '../../papers/sizes.ts'
import type { Role } from '../../people/roles.ts'
import type { Exclusion } from '../../vocabulary/work.ts'
import { paperSizeNames, paperTitles } from './paper-names.ts'
import { copyRefused } from './restore.ts'
import type { Needs, Sentences } from './sentence.ts'
import { vocabulary } from './vocabulary.ts'

/** Whoever has one of these roles, of roles with a space between them. */
const anyOf = (some: string) =>
  some
    .split(' ')
    .map(role => vocabulary.whoIs[role as Role])
    .join(' or ')

const paperSizes = (kind: AnyKind) => sizesOf[kind].map(size => paperSizeNames[size]).join(', ')

/** What the shop's rules refuse, and what the edge finds wrong with what was typed: what is wrong and what to do. */
export const refusals = {
  'book.otherFigures': (v: Needs<'quantity' | 'unit'>) =>
    `The price book says ${v.quantity} at ${v.unit} now. Add the line from it anew, or write the price yourself.`,
  'unseen.silvered-dial': () =>
    'A silvered dial is left alone or re-silvered, never cleaned. Read the cautions on the bench card and record that they were seen; then this can be written.',
  'refused.silvered-dial': () =>
    'The dial is silvered: it is re-silvered or left alone, never cleaned. Its film is very thin.',
  'input.required': () => 'This is needed.',
  'input.nothing': () => 'Say what is to change.',
  'input.wrongType': () => 'This is not the kind of value that belongs here.',
  'input.tooLong': (v: Needs<'most'>) => `This is too long: at most ${v.most}.`,
  'input.seenMissing': () => 'Say of every group what you have seen of it.',
  'record.changedSince': (v: Needs<'who' | 'at'>) =>
    `${v.who} changed this at ${v.at}, after you opened it. Look at what stands there now; send this again to put yours in its place.`,
  'input.tooDeep': () => 'Lists stand in one another too deep here; this comes from no form of Countwheel.',
  'input.tooShort': (v: Needs<'least'>) => `This is too short: at least ${v.least}.`,
  'input.tooSmall': (v: Needs<'least'>) => `This must be at least ${v.least}.`,
  'input.tooLarge': (v: Needs<'most'>) => `This must be at most ${v.most}.`,
  'input.notOneOf': (v: Needs<'choices'>) => `Choose one of: ${v.choices}.`,
  'input.unknownField': (v: Needs<'name'>) => `There is no field “${v.name}” here.`,
  'input.invalid': () => 'This cannot be read.',
  'input.notADate': () => 'This is not a date. Write it as year-month-day, such as 2027-03-04.',
  'input.notATime': () => 'This is not a date and time. Write it as 2027-03-04T09:20.',
  'input.notADecimal': () => 'Write a plain number without thousands separators, such as 1250 or 1.5.',
  'input.notAPhone': () =>
    'This is not a phone number that can be dialled. Write it with its country’s prefix, or say that it is to be kept as it is written.',
  'input.notAnEmail': () => 'This is not an e-mail address.',
  'input.notAZone': () => 'This is not a time zone, such as Europe/London.',
  'input.notALocale': () => 'This is not a language and region, such as en-GB.',
  'input.notACurrency': () => 'This is not a currency code, such as GBP.',
  'request.unknown': () => 'There is nothing at this address.',
  'request.notJson': () => 'What was sent cannot be read. Try again; nothing was written.',
  'request.tooLong': () => 'What was sent is too long. Nothing was written.',
  'request.failed': () =>
    'Something went wrong in the program and nothing was written. Your entry is still here; try once more.',
  'request.diskFull': () =>
    'The disk is full. Nothing was written and the ledger is sound; make room and try again.',
  'request.diskFailed': () =>
    'The disk did not take the entry. Nothing was written; look at the disk before going on, and back the ledger up.',
  'ledger.notOpen': () =>
    'The ledger is not open: its first page asks what is to be done. Open that page, and go on from there.',
  'act.keyUsed': () =>
    'An entry was made under this key already, as another act or with other words, perhaps from another window. Nothing was written now: look at what was entered, and open the form anew for a further entry.',
  'act.keyRedacted': () =>
    'An entry of this key was made, and its text has been taken out since: nobody can say whether it was this one. Look for it in the day book before you send it again.',
  'request.keyMalformed': () =>
    'An Idempotency-Key has 8 to 128 letters, figures, dots, dashes or underscores.',
  'dayBook.unknown': () => 'There is no such row in the day book.',
  'dayBook.otherRow': (v: Needs<'id'>) =>
    `Row ${v.id} of the day book is another one than the one you saw. Look at it again.`,
  'dayBook.aRedaction': (v: Needs<'id'>) => `Row ${v.id} itself says that texts were taken out; it stays.`,
  'dayBook.redactedAlready': (v: Needs<'id'>) => `The text of row ${v.id} has been taken out already.`,
  'dayFile.redacted': () =>
    'The text of this act has been taken out of its day book, so it cannot be played. An archive moves such a ledger (npm run archive).',
  'dayFile.unreadable': () => 'What this act says has the shape of no version there ever was.',
  'dayFile.version': (v: Needs<'version'>) =>
    `This act is of version ${v.version}, which this Countwheel does not know. Bring it up to date to play it.`,
  'restore.open': () =>
    'The ledger is open. Close Countwheel and start it anew where something is wrong with it.',
  'restore.nothingThere': () =>
    'There is no file of that name. Write the whole path, as the folder’s window shows it.',
  'restore.otherLedger': () =>
    'This is a copy of another ledger. Tick that it shall take this one’s place, or choose another copy.',
  'restore.noRoom': () =>
    'There is not enough room on the disk for this copy beside what is there. Make room, and try again.',
  'restore.unsound': (v: Needs<'faults'>) =>
    `This copy does not pass its checks (${v.faults} faults), so nothing was changed. “npm run verify” says which; choose an older one.`,
  'restore.refused': (v: Needs<'reason'>) =>
    `This copy cannot be brought back, and nothing was changed: ${copyRefused(v.reason)}`,
  'ledger.gone': () =>
    'The ledger’s file was taken away, renamed or replaced while it was open. Nothing was written and what you typed is still here. Put the file back under its name and send this again, or close Countwheel and start it anew: it offers the backups.',
  'shop.alreadyOpen': () => 'The shop is open already; change its settings on the Shop page.',
  'shop.notOpen': () => 'Open the shop first: say its name, its place and its money.',
  'person.unknown': () => 'This person is not in the ledger.',
  'person.notHere': () => 'This person no longer works here. Say at the head of the page who you are.',
  'act.nameNeeded': () =>
    'This needs a name, as several people work here. Say at the head of the page who you are.',
  'act.reserved': (v: Needs<'who'>) =>
    `Only ${anyOf(String(v.who))} may do this. They can choose their name at the head of the page and do it here.`,
  'person.nameTaken': (v: Needs<'name'>) => `There is already a ${v.name} in the ledger.`,
  'person.lastOwner': () =>
    'Then nobody who works here would be an owner, and nobody could change this again. Make somebody else an owner first.',
  'person.benchHours': (v: Needs<'most'>) =>
    `Give the hours of a week, from 0 to ${v.most}; leave it empty where nobody counts them.`,
  'place.unknown': () => 'This place is not in the ledger.',
  'place.nameTaken': (v: Needs<'name'>) => `There is already a place called ${v.name}.`,
  'place.taken': (v: Needs<'number' | 'place'>) =>
    `Repair ${v.number} stands at ${v.place}. Choose another place.`,
  'owner.unknown': () => 'This owner is not in the ledger.',
  'owner.likely': (v: Needs<'who'>) =>
    `On record already: ${v.who}. Say whether it is the same person, or someone else.`,
  'forget.clockHere': (v: Needs<'number'>) =>
    `A clock of theirs is in the shop, as repair ${v.number}. Hand it over first.`,
  'forget.moneyOpen': (v: Needs<'due' | 'number'>) =>
    `${v.due} is open on repair ${v.number}. Settle it first.`,
  'forget.held': (v: Needs<'held'>) => `${v.held} is held on the owner’s account. Give it back first.`,
  'owner.same': () => 'An owner cannot be merged with itself.',
  'owner.merged': () => 'This owner was merged into another; use that one.',
  'contact.unknown': () => 'This contact is not in the ledger.',
  'clock.unknown': () => 'This clock is not in the ledger.',
  'import.nothingNew': () => 'Everything in this list is on record already. Nothing is written.',
  'import.unknownWord': (v: Needs<'text'>) => `“${v.text}” is none of the shop’s words for this.`,
  'clock.likely': (v: Needs<'whose'>) =>
    `A clock of this serial number is on record${v.whose ? `, of ${v.whose}` : ''}. Say whether it is the same one, or another.`,
  'clock.otherOwner': (v: Needs<'owner'>) =>
    `This clock belongs to ${v.owner}. Record its change of owner first.`,
  'comeback.otherClock': (v: Needs<'number'>) => `Repair ${v.number} was of another clock.`,
  'comeback.none': (v: Needs<'number'>) => `Repair ${v.number} did not come back from an earlier one.`,
  'comeback.excluded': (v: Needs<'number'> & { readonly cause: Exclusion }) =>
    `The warranty of repair ${v.number} leaves this out: ${vocabulary.exclusions[v.cause]}. It cannot be called covered.`,
  'comeback.notCovered': (v: Needs<'number'>) =>
    `The warranty of repair ${v.number} does not cover today. Take the clock in as a new repair, or correct the dates.`,
  'clock.inShop': (v: Needs<'number'>) => `This clock is in the shop already, as repair ${v.number}.`,
  'repair.unknown': () => 'This repair is not in the ledger.',
  'repair.collected': (v: Needs<'number'>) =>
    `Repair ${v.number} has been collected; nothing more can be entered on it.`,
  'note.unknown': () => 'This condition note is not in the ledger.',
  'entry.struck': () => 'This entry has been struck out already.',
  'belonging.unaccounted': (v: Needs<'item'>) =>
    `${v.item} was received and is not ticked back. Tick it, or write why it is not returned.`,
  'belonging.unknown': () => 'This belonging is not on the claim check.',
  'estimate.unknown': () => 'This estimate is not in the ledger.',
  'estimate.sent': () => 'This estimate has been sent and stays as it is. Write a new version.',
  'estimate.notSent': () => 'Send the estimate before recording the answer to it.',
  'estimate.newer': (v: Needs<'repair' | 'number'>) =>
    `Repair ${v.repair} has a newer estimate, ${v.number}. Look at that one first.`,
  'estimate.writtenMeanwhile': (v: Needs<'number'>) =>
    `Estimate ${v.number} was written meanwhile and stands below now. Read it; send this again to write a further version.`,
  'estimate.repairTwice': (v: Needs<'number'>) => `Repair ${v.number} stands on this estimate already.`,
  'estimate.otherOwner': (v: Needs<'number'>) => `Repair ${v.number} is another owner’s.`,
  'estimate.notTogether': () => 'This repair is not on the same estimate, or is answered already.',
  'repair.dateChanged': (v: Needs<'on'>) =>
    `Meanwhile the estimated date was changed to ${v.on}. Send this again to change it all the same.`,
  'word.recordedMeanwhile': (v: Needs<'who' | 'answer'>) =>
    `Meanwhile a word was recorded: ${v.who}, ${v.answer === 'declined' ? 'declined' : 'go-ahead'}. Read it below; send this again to record a further word.`,
  'estimate.highBelowLow': () => 'The upper end must not be below the estimate itself.',
  'limit.exceeded': (v: Needs<'total' | 'limit'>) =>
    `This comes to ${v.total}, above the ${v.limit} the owner has agreed to. Write a supplement and record the answer first.`,
  'limit.part': (v: Needs<'total' | 'limit' | 'most'>) =>
    `With this part the bill would come to ${v.total}. The owner has agreed to ${v.limit}; without a new word it may come to ${v.most} at most. Write a supplement and ask the owner, or tick that the shop bears its cost.`,
  'limit.outside': (v: Needs<'total' | 'limit' | 'most'>) =>
    `With this the bill would come to ${v.total}. The owner has agreed to ${v.limit}; without a new word it may come to ${v.most} at most. Write a supplement and ask the owner, or leave the price empty where the shop bears it.`,
  'standing.noEstimateSent': () => 'Send an estimate first.',
  'standing.noEstimateWritten': () => 'Write an estimate first.',
  'standing.noGoAhead': () => 'The owner has not given the go-ahead yet.',
  'standing.runningIn': () => 'The clock is running in. Decide on its run-in first.',
  'standing.notRunningIn': () => 'The clock is not running in.',
  'standing.alreadyReady': () => 'The clock is ready already.',
  'standing.labourRunning': () => 'The labour clock is still running on this repair. Stop it first.',
  'standing.noWork': () => 'Nothing has been done at the bench yet.',
  'standing.stillWaiting': () => 'The repair is still waiting. End the wait first.',
  'standing.notWaiting': () => 'The repair is not waiting for anything.',
  'standing.notReady': () => 'The clock is not ready yet.',
  'standing.invoiced': () => 'This repair has been invoiced. Correct it with a credit note.',
  'standing.notInvoiced': () => 'Write the invoice first.',
  'standing.collected': () => 'The clock has been collected.',
  'labour.running': (v: Needs<'number'>) =>
    `Your labour clock runs on repair ${v.number}. Stop it, or let this start stop it.`,
  'labour.notRunning': () => 'No labour clock is running.',
  'labour.unknown': () => 'This labour entry is not in the ledger.',
  'labour.endBeforeStart': () => 'The work cannot end before it began.',
  'labour.inFuture': () => 'This lies in the future.',
  'labour.tooLong': () => 'No entry may be longer than 16 hours. Say when the work really ended.',
  'labour.overlap': (v: Needs<'number'>) =>
    `This runs into labour of yours on repair ${v.number}. Correct one of the two.`,
  'labour.eitherWay': () => 'Give the times, or the minutes: one of the two.',
  'clock.doubtedBehind': (v: Needs<'today' | 'last'>) =>
    `By this computer’s clock it is ${v.today}, before the last entry (${v.last}). Nothing was written and what you typed is still here. Say at the head of the page whether the clock is right.`,
  'clock.doubtedAhead': (v: Needs<'today' | 'last'>) =>
    `By this computer’s clock it is ${v.today}; the last entry was made on ${v.last}, and the shop has been open since. Nothing was written and what you typed is still here. Say at the head of the page whether the clock is right.`,
  'clock.otherDay': (v: Needs<'today'>) =>
    `By this computer’s clock it is ${v.today} by now. Look again and say whether that is right.`,
  'clock.behind': () =>
    'The computer’s clock stands before what is already on record. Set it right, then try again; nothing was written.',
  'finding.unknown': () => 'This finding is not in the ledger.',
  'step.notOfThisClock': () => 'This clock’s service has no such step.',
  'wait.open': () => 'The repair is already waiting for this.',
  'asFound.unknown': () => 'This as-found note is not in the ledger.',
  'order.twice': () => 'A repair can stand in the queue only once.',
  'wait.ended': () => 'This wait is over already.',
  'wait.unknown': () => 'This wait is not in the ledger.',
  'vendor.unknown': () => 'This vendor is not in the ledger.',
  'vendor.nameTaken': (v: Needs<'name'>) => `There is already a vendor called ${v.name}.`,
  'outside.unknown': () => 'This outside work is not in the ledger.',
  'outside.back': () => 'This came back already.',
  'part.unknown': () => 'This part is not in the ledger.',
  'part.notEnough': (v: Needs<'inStock'>) => `Only ${v.inStock} in stock.`,
  'part.notUsed': (v: Needs<'used'>) => `Only ${v.used} of this part are on the repair.`,
  'move.unknown': () => 'This stock move is not in the ledger.',
  'move.notAUse': () => 'Only parts used on a repair can be put back.',
  'size.twice': () => 'This dimension stands here twice.',
  'part.countUnchanged': () => 'The count agrees with the ledger: nothing to correct.',
  'order.unknown': () => 'This order is not in the ledger.',
  'order.arrived': () => 'This order has arrived already.',
  'estimatedDate.benches': () => 'At least one person must work at the bench.',
  'estimatedDate.minutes': () => 'The minutes must be whole and not negative.',
  'runIn.unknown': () => 'This run-in is not in the ledger.',
  'runIn.ended': () => 'This run-in has ended.',
  'reading.nothing': () => 'Write how far it is off, such as +0:02, or what was seen, heard or done.',
  'reading.notAnError': () =>
    'Write seconds fast or slow, such as -63, +0:02 or 1:02:10, or what the dial shows, such as =10:24.',
  'reading.nutTurns': () => 'Write turns of the nut as a plain number between -100 and 100.',
  'runIn.inFuture': () => 'A run-in cannot begin in the future.',
  'runIn.beforeLastEnded': () => 'The run-in before this one had not ended yet.',
  'runIn.beforeTakenIn': () => 'The clock was not in the shop yet.',
  'runIn.limitPerDay': () => 'Write seconds as a plain number from 0.01 to 86400.',
  'reading.inFuture': () => 'A reading cannot lie in the future.',
  'reading.beforeStart': () => 'This lies before the run-in began.',
  'reading.sameTime': () => 'There is a reading of that very time already: correct it, or give another time.',
  'reading.unlikely': (v: Needs<'foretold'>) =>
    `By its readings it should be about ${v.foretold} s off now. If it really shows this, say so below and enter it again.`,
  'reading.unknown': () => 'This reading is not in the ledger.',
  'reading.corrected': () => 'This reading has been corrected already.',
  'runIn.reasonNeeded': () => 'The figures do not say pass. Write why it passes all the same.',
  'draft.unknown': () => 'This draft has been entered or thrown away.',
  'document.unknown': () => 'This paper is not in the ledger.',
  'paper.size': ({ kind, size }: { readonly kind: AnyKind; readonly size: PaperSize }) =>
    `${paperTitles[kind]} does not fit on ${paperSizeNames[size]}. It comes on ${paperSizes(kind)}.`,
  'paper.staysHere': ({ kind }: { readonly kind: AnyKind }) =>
    `${paperTitles[kind]} stays in the shop: no copy of it is handed out.`,
  'paper.noPeriod': ({ kind }: { readonly kind: AnyKind }) => `${paperTitles[kind]} speaks of no period.`,
  'document.notAnInvoice': () => 'Only an invoice can be paid or credited.',
  'document.credited': () => 'This invoice has been credited in full already.',
  'account.notEnough': (v: Needs<'held'>) => `Only ${v.held} is held on the owner’s account.`,
  'credit.amountLeft': (v: Needs<'left'>) => `Only ${v.left} of this line is left to credit.`,
  'credit.eitherWay': () => 'Write how many of the line are credited, or an amount of it: one of the two.',
  'credit.lineCredited': () => 'This line has been credited in full already.',
  'credit.lineTwice': () => 'This line stands here twice.',
  'credit.moreThanLeft': (v: Needs<'left'>) =>
    `Only ${v.left} of the invoice is left to credit. Credit the lines that take off from it too.`,
  'credit.noLine': () => 'The invoice has no such line.',
  'credit.quantityLeft': (v: Needs<'left'>) => `Only ${v.left} of this line are left to credit.`,
  'credit.writtenOff': (v: Needs<'writtenOff'>) =>
    `${v.writtenOff} of this repair was written off. Take the write-off back first, then credit.`,
  'date.inFuture': () => 'This day is still to come.',
  'document.earlier': (v: Needs<'number' | 'date'>) =>
    `${v.number} was issued on ${v.date}; a later number cannot bear an earlier day.`,
  'drawer.remark': (v: Needs<'expected' | 'difference'>) =>
    `The entries come to ${v.expected}, a difference of ${v.difference}. Count once more, or write what you know of it.`,
  'drawer.takenMore': (v: Needs<'counted'>) => `Only ${v.counted} was counted.`,
  'payment.belowCash': (v: Needs<'step'>) =>
    `This is less than cash can pay: the smallest amount is ${v.step}. Choose another way, or write it off.`,
  'payment.moreThanOwed': (v: Needs<'due' | 'rest'>) =>
    `Only ${v.due} is owed. Take no more, or say that the rest, ${v.rest}, goes to the owner’s account.`,
  'payment.notInCash': (v: Needs<'step'>) =>
    `Cash cannot pay this: the smallest amount is ${v.step}. Write a multiple of it, or all that is owed.`,
  'period.alreadyClosed': (v: Needs<'to'>) => `The books are closed to ${v.to} already. Choose a later day.`,
  'period.closed': (v: Needs<'date' | 'to'>) =>
    `${v.date} lies in the books closed to ${v.to}. Book it on a later day; what is wrong there is corrected by a new entry.`,
  'period.notOver': () => 'Only days that are over can be closed. Choose yesterday or an earlier day.',
  'place.currencyInUse': (v: Needs<'papers' | 'currency' | 'first'>) =>
    `${v.papers} papers and estimates of this ledger are in ${v.currency}, beginning with ${v.first}. A ledger has one currency: begin a new ledger for another, and keep this one as it is.`,
  'writeOff.moreThanOwed': (v: Needs<'due'>) => `Only ${v.due} is owed, and no more can be given up.`,
  'writeOff.none': () => 'Nothing is written off on this repair.',
  'payment.moreThanHeld': (v: Needs<'held'>) => `Only ${v.held} can be given back.`,
  'payment.tooLittle': () => 'Less was laid down than is paid.',
  'payment.zero': () => 'Write an amount that is not zero.',
  'handOver.unpaid': (v: Needs<'due'>) =>
    `${v.due} is still owed. Take the payment, or write why the clock goes without it.`,
  'handOver.authority': () => 'Someone else collects: write what authority and identification were shown.',
  'photograph.unknown': () => 'This photograph is not in the ledger.',
  'photographFile.unknown': () =>
    'The file of this photograph is not beside the ledger. Copy the folder of photographs from a backup, and it is back.',
  'photograph.missing': () =>
    'These bytes are not beside the ledger. Send the photograph itself; it is put on record with it.',
  'photograph.notAnImage': () => 'Only JPEG, PNG or WebP photographs can be kept.',
  'photograph.damaged': () => 'This photograph is damaged: it breaks off or makes no sense. Take another.',
  'photograph.tooManyPoints': (v: Needs<'most'>) =>
    `This picture has more than ${v.most} million points. Make it smaller, or take another.`,
  'photograph.tooHeavy': (v: Needs<'most'>) =>
    `This file has more than ${v.most} MB. Choose a photograph, or a smaller one.`,
  'photograph.unreadable': () =>
    'This picture cannot be read here. Save it as JPEG and try again, or take another.',
  'photograph.notPrintable': () =>
    'WebP photographs cannot be printed on a paper: make a JPEG of it, as the pages do by themselves.',
  'photograph.kept': () => 'This photograph is on record already.',
  'photograph.otherKind': () => 'The ledger has this photograph on record as another kind of file.',
  'photograph.attached': () => 'This photograph is there already.',
  'photograph.noAccess': () =>
    'The folder of photographs beside the ledger cannot be written to. See who it belongs to, then try again.',
  'backup.noAccess': (v: Needs<'folder'>) =>
    `No backup was made: the folder ${v.folder} cannot be written to. See who it belongs to, or choose another on the Shop page.`,
  'backup.full': (v: Needs<'folder'>) =>
    `No backup was made: there is no room left for it on the disk of ${v.folder}, or on the ledger’s own. Make room, or choose another folder on the Shop page.`,
  'backup.folderGone': (v: Needs<'folder'>) =>
    `No backup was made: the folder ${v.folder} is not there. Put the disk or memory stick in, and the copy is made.`,
  'backup.otherLedger': (v: Needs<'folder'>) =>
    `No backup was made: the folder ${v.folder} holds the backups of another ledger of the same name. Choose another folder on the Shop page.`,
  'backup.failed': (v: Needs<'folder'>) =>
    `No backup was made in ${v.folder}, and why is not known. Look whether the disk is sound, or choose another folder on the Shop page.`,
  'backup.folderNotWhole': () =>
    'Give the whole path of the folder, from the very beginning, or leave it empty.',
  'folder.isAFile': (v: Needs<'name'>) =>
    `Beside the ledger a file stands where the folder ${v.name} should be. Give the file another name, put the folder back from a backup, and try again.`,
  'backup.damaged': () =>
    'The copy did not pass its check and was not kept. Go on with care: copy the ledger’s folder to another disk, and look at this disk before writing more.',
} satisfies Sentences
