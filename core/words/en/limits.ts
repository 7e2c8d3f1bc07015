import type { Going } from '../../run-in/limits.ts'

/** The group of the Shop page that says how near and how steady clocks have to go. */
export const limits = {
  intro:
    'How near to the true time a clock has to go before it is handed over, once regulated, and how little its readings may scatter about their line. The rate can be regulated; unsteadiness cannot. A run-in already begun keeps what it was begun with.',
  perDay: 'Rate within',
  perDayUnit: 's a day',
  steady: 'Steady within',
  steadyUnit: 's',
  of: (what: string, going: string) => `${what}, ${going}`,
  goings: {
    'seconds-pendulum': 'Weight, dead-beat, seconds pendulum',
    'wall-dead-beat': 'Wall regulator, dead-beat',
    'weight-anchor': 'Weight, anchor (longcase)',
    'spring-recoil': 'Spring, recoil (mantel, bracket)',
    platform: 'Platform (carriage, ship’s)',
    cuckoo: 'Cuckoo',
    torsion: 'Torsion',
    verge: 'Verge with bob pendulum, lantern',
  } satisfies Record<Going, string>,
  reasons: {
    'seconds-pendulum': 'From memory: such regulators are set to seconds a week.',
    'wall-dead-beat': 'From memory: about a minute a week.',
    'weight-anchor': 'From memory: one to two minutes a week; the drive is even.',
    'spring-recoil': 'Common practice: within four minutes a week. A spring gains early and loses late.',
    platform: 'From memory: positions and the spring tell on a balance.',
    cuckoo: 'Common practice: one to three minutes a week.',
    torsion: 'Goodrich, The Modern Clock: five minutes a week is close.',
    verge: 'Common practice: ten to fifteen minutes a day.',
  } satisfies Record<Going, string>,
}
