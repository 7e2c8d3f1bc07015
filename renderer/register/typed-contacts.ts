/** The ways to reach a new owner as they are typed. */
export const noContacts = { phone: '', email: '', phoneAsWritten: false }

type Typed = typeof noContacts

/** The request's contacts: what was typed, the first of them preferred; what is left empty is left out. */
export function typedContacts({ phone, email, phoneAsWritten }: Typed) {
  const typed = [
    { kind: 'phone' as const, value: phone.trim(), ...(phoneAsWritten ? { asWritten: true } : {}) },
    { kind: 'e-mail' as const, value: email.trim() },
  ].filter(({ value }) => value !== '')
  return typed.map((contact, index) => ({ ...contact, preferred: index === 0 }))
}

/** The place of each field's contact in the request, so that its problem finds it: an empty telephone is left out before the e-mail. */
export const contactPlaces = ({ phone }: Pick<Typed, 'phone'>) =>
  phone.trim() === '' ? { phone: null, email: 0 } : { phone: 0, email: 1 }
