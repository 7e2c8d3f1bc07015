import type { SetUpAdvice } from '../../vocabulary/work.ts'

/** How an owner sets a clock up at home. Common practice. */
export const setUpAdvice = {
  level: 'Stand or hang the clock where it is firm and level, away from heat and draught.',
  beat: 'Listen to the tick: it should be even. If it limps, the clock is out of beat and will stop.',
  wind: 'Wind it fully at the same hour each time, with the key that belongs to it, and let the key turn back gently. A spring cannot be over-wound: wind until it stops.',
  'hands-forward': 'Set the time with the minute hand, forwards, and wait for each strike to finish.',
  'lift-dome': 'Lift the glass dome straight up with both hands.',
  'weights-off':
    'Take off the pendulum and the weights before the clock is moved; they go back left, centre and right as marked.',
  'fix-to-wall': 'Fix the case to the wall before the weights are hung; two people should move it.',
  'strike-out-of-step':
    'If the strike is out of step with the hands, let it be tripped through the hours until they agree.',
  regulate:
    'Too fast: lower the bob by its nut. Too slow: raise it. A little at a time, and wait some days before judging, best a whole wind.',
  'pendulum-off': 'Take off or tie up the pendulum before the clock is carried, every time.',
  'torsion-lock':
    'Lock the pendulum before the clock is moved or turned, and free it only where it stays: its suspension wire kinks at a touch.',
  'torsion-settle':
    'Turn the pendulum about three quarters of a turn and let it settle. It turns slowly and without a tick to be heard; do not shake it.',
  'torsion-regulate':
    'Regulate by the disc on the pendulum, a little at a time, and wait some days: five minutes a week is close for such a clock.',
  cuckoo:
    'Take the wires or paper out of bellows and chains, free the bird’s wire, and pull the free end of each chain straight down, the weight left hanging.',
  'wind-weights': 'Wind the weights up gently, not quite to the top, before they reach the floor.',
  'platform-regulate':
    'If it gains or loses, have its lever moved, or move it a little at a time, towards S or R for slower, F or A for faster.',
  'chime-corrects':
    'If the chime does not agree with the hands, leave it: it sets itself right within some hours.',
  'chime-set':
    'If the chime does not agree with the hands, move the minute hand forwards to each quarter in turn and let it play until it does.',
  'mercury-pendulum':
    'The pendulum holds mercury: let the shop carry it, upright and closed. Spilt mercury is never swept or vacuumed; open the window, keep away, and ask those whose work it is.',
  'weights-off-wall':
    'Take the weights off, and the pendulum, before the clock is moved, every time; each goes back where it was.',
  'hands-forward-silent': 'Set the time with the minute hand, forwards.',
  'wind-year': 'Wind it once a year, best on the same day, with its own key.',
  mains:
    'There is nothing to wind or to set in beat. Its mains lead and plug are looked at by a competent electrician; local rules come first.',
  'service-again': 'Oil dries: have the clock looked at again after the years the shop advises.',
} satisfies Record<SetUpAdvice, string>
