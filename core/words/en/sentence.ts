/** The figures a sentence needs, by name. */
export type Needs<Name extends string> = Readonly<Record<Name, string | number>>

/** Sentences by the code they belong to: each says what is wrong and what to do, of the figures it needs. */
export type Sentences = Readonly<Record<string, (values: never) => string>>
