import type { Needs, Sentences } from './sentence.ts'
/** What the sums find wrong: what is wrong and what to do about it. */
export const problems = {
  'allocate.noWeight': () => 'At least one share must weigh something.',
  'allocate.weight': () => 'A share’s weight is a whole number, 0 or more.',
  'book.clocks': () => 'A visit is to 1 to 1000 clocks.',
  'book.hoursTwice': () => 'There are hours for this work on such a clock already.',
  'book.markupOrder': () => 'Put the tiers in order of rising cost, the one for any cost last.',
  'book.noHours': (v: Needs<'trains'>) =>
    `The price book has no hours for this work on such a clock of ${v.trains} ${v.trains === 1 ? 'train' : 'trains'}. Enter them, or write the hours yourself.`,
  'book.noFee': () => 'The price book asks no fee for an estimate.',
  'book.noFeePaid': () =>
    'No fee for an estimate of this clock is billed and paid, or it is taken off already.',
  'book.noMarkup': () => 'No markup reaches so high a cost. Add a tier for any cost.',
  'book.noPart': () => 'Choose the part of the stores.',
  'calc.unknownName': (v: Needs<'name' | 'choices'>) =>
    `There is no calculation called “${v.name}”. Choose one of: ${v.choices}.`,
  'calendar.closedAllWeek': () => 'The shop is closed all week. Enter its open hours.',
  'calendar.endsBeforeItBegins': () => 'The end must come after the beginning.',
  'calendar.minutes': () => 'Write whole minutes, 0 or more.',
  'calendar.neverOpen': () =>
    'With these hours, holidays and closures this never comes about before the year 10000.',
  'calendar.overlap': () => 'These hours run into others of the same day. Enter each stretch once.',
  'calendar.time': (v: Needs<'text'>) => `“${v.text}” is not a time of day. Write it as 09:00.`,
  'calendar.weekday': () => 'A weekday is 1 (Monday) to 7 (Sunday).',
  'date.beyondCalendar': () => 'This leads beyond the year 9999.',
  'date.notADate': (v: Needs<'text'>) =>
    `“${v.text}” is not a date. Write it as year-month-day, such as 2027-03-04.`,
  'date.notALocalTime': (v: Needs<'text'>) =>
    `“${v.text}” is not a date and time. Write it as 2027-03-04T09:20.`,
  'date.notAnInstant': (v: Needs<'text'>) =>
    `“${v.text}” is not an instant. Write it in UTC, as 2027-03-04T09:20:00Z.`,
  'fit.lengths': (v: Needs<'x' | 'y'>) =>
    `There are ${v.x} values of x and ${v.y} of y. Give one y for each x.`,
  'fit.notFinite': () => 'This number is too large to reckon with.',
  'fit.sameX': () => 'All x are the same: no line can be drawn.',
  'fit.tooFew': () => 'A line needs at least two points.',
  'fit.tooMany': (v: Needs<'most'>) => `Give at most ${v.most} points.`,
  'holidays.country': (v: Needs<'country'>) =>
    `No public holidays are known for the country “${v.country}”. Enter them by hand.`,
  'holidays.region': (v: Needs<'region'>) =>
    `No public holidays are known for the region “${v.region}”. Leave it out, or enter them by hand.`,
  'holidays.year': () => 'Choose a year from 1900 to 2200.',
  'mainspring.arbor': () => 'The arbor must be thinner than the barrel is wide.',
  'mainspring.thickness': () => 'The spring is too thick for the room between arbor and barrel wall.',
  'money.notADecimal': (v: Needs<'text'>) =>
    `“${v.text}” is not an amount. Write it plainly, such as 1234.50: no separators, signs of currency or exponents.`,
  'money.tooLarge': () => 'This comes to more than can be kept exactly.',
  'money.tooPrecise': (v: Needs<'text' | 'digits'>) =>
    `“${v.text}” has more decimals than the currency: at most ${v.digits}.`,
  'money.unknownCurrency': (v: Needs<'currency'>) => `“${v.currency}” is not a currency code, such as GBP.`,
  'number.negative': () => 'This must not be negative.',
  'number.notADecimal': (v: Needs<'text'>) =>
    `“${v.text}” is not a plain number, such as 1.5: no separators, no exponents, at most 40 characters.`,
  'number.notPositive': () => 'This must be more than 0.',
  'number.notWhole': () => 'This must be a whole number.',
  'number.outOfRange': (v: Needs<'least' | 'most'>) => `This must be from ${v.least} to ${v.most}.`,
  'pendulum.heightAlone': () => 'A height needs a latitude beside it.',
  'pendulum.oneOf': (v: Needs<'one' | 'other'>) =>
    `Give either ${v.one} or ${v.other}, not both and not neither.`,
  'price.discountOverUnit': () => 'The discount is more than the price itself.',
  'price.kind': (v: Needs<'kind'>) => `“${v.kind}” is not a kind of line.`,
  'price.negativeUnit': () => 'A price is never negative. For a credit, make the quantity negative.',
  'price.taxBasis': () => 'Tax is reckoned by line or by group.',
  'price.taxCode': () => 'A tax needs a code.',
  'price.taxMode': () => 'Tax is rounded half-up, half-even or down.',
  'price.taxTwice': (v: Needs<'tax'>) => `The tax ${v.tax} is on this line twice at one rate.`,
  'price.tooManyTaxes': (v: Needs<'most'>) => `Give at most ${v.most} taxes on one line.`,
  'rate.error': () => 'Write the clock’s error in seconds, a plain number.',
  'rate.outOfOrder': () =>
    'This reading is earlier than the one before it. Put the readings in order of time.',
  'rate.sameTime': () => 'There is already a reading at this time.',
  'rate.segmentTooLong': (v: Needs<'most'>) =>
    `More than ${v.most} readings without the clock being touched. Give a shorter log.`,
  'rate.tooMany': (v: Needs<'most'>) => `Give at most ${v.most} readings.`,
  'runIn.duration': () => 'A movement is 30-hour, 8-day, 31-day or 400-day.',
  'runIn.noStage': () => 'A run-in needs at least one stage.',
  'runIn.readingEveryDays': (v: Needs<'longest'>) => `A reading is due every 1 to ${v.longest} days.`,
  'runIn.stageLength': (v: Needs<'longest'>) =>
    `A stage lasts whole winds or days, at least 1 and at most ${v.longest} days.`,
  'runIn.stageName': () => 'Give the stage a name.',
  'runIn.trains': () => 'A clock has 1 to 3 trains.',
  'runIn.windsOrDays': () => 'A stage lasts so many winds or so many days: give one of the two.',
  'shape.missing': () => 'This is needed.',
  'shape.notJson': () => 'This is not JSON.',
  'shape.notOneOf': (v: Needs<'choices'>) => `Choose one of: ${v.choices}.`,
  'shape.tooMany': (v: Needs<'most'>) => `Give at most ${v.most} of these.`,
  'shape.unknownField': (v: Needs<'name'>) => `There is no field “${v.name}” here.`,
  'shape.wrongType': (v: Needs<'expected'>) => `This must be ${v.expected}.`,
  'strike.blows': () => 'Write the blows heard, a whole number from 0 to 100.',
  'strike.endsBeforeItBegins': () => 'The end must not come before the beginning.',
  'strike.hourShown': () => 'The hour on the dial is a whole number from 1 to 12.',
  'strike.quarter': () => 'The quarter is 1, 2, 3 or 4.',
  'strike.pattern': () => 'This is not a way of striking that is known here.',
  'clock.beats': () =>
    'Write beats an hour, such as 7200 or 8142.857, or the train, such as 84-78 / 7-7 / 30: the wheels from the centre, a pinion for each, the teeth of the escape wheel.',
  'train.empty': () => 'A train needs at least one wheel.',
  'train.pairs': (v: Needs<'wheels' | 'pinions'>) =>
    `There are ${v.wheels} wheels and ${v.pinions} pinions. Give one pinion for each wheel.`,
  'train.tooLong': (v: Needs<'most'>) => `Give at most ${v.most} wheels.`,
  'warranty.comeback': () => 'A comeback restarts the term or the term goes on.',
  'warranty.convention': () => 'A term ends on the same date or the day before.',
  'warranty.length': (v: Needs<'longest'>) =>
    `A term is a whole number, at least 1 and at most ${v.longest}.`,
  'warranty.pausedDays': (v: Needs<'longest'>) => `Days in the shop are a whole number, 0 to ${v.longest}.`,
  'warranty.stayEndsBeforeItBegins': () => 'The clock cannot be handed back before it was taken in.',
  'warranty.staysOutOfOrder': () => 'The visits must be in order of date, each after the one before.',
  'warranty.unit': () => 'A term is counted in months or days.',
} satisfies Sentences
