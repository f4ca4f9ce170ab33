/** What has to be seen to on any car before it runs; printed on every sheet. */
export const SHEET_CAUTIONS: readonly string[] = [
  'Steer lock to lock by hand at full droop, at ride height and at full bump: nothing binds, no hose or cable is taut.',
  'Springs stay captive at full droop.',
  'Cam and camber bolts hold by clamp force alone: torque them to the maker’s data, mark them, and check them again after the first run.',
  'Locking fasteners are used once.',
  'Witness holes of rod ends are covered by thread; lock nuts are tight.',
  'Long pins and stacks of shims bend their bolts: have them calculated.',
  'Behind wheel spacers: see that the studs engage far enough.',
  'These settings may not be legal on the road.',
  'The numbers are for rigid links and spherical joints, without compliance.',
  'The maker’s service data, the series’ rules and a qualified engineer come first, not this sheet.',
];
