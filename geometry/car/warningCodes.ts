/** Every code of a warning that reading a file can give, for the guide. */
export const WARNING_CODES = {
  'setting-off-step': 'A setting between the steps or marks that the part has. It is computed as given.',
  'not-level': 'Front and rear contact centres differ in height by more than 0.5 mm at design.',
  'range-off-zero': 'An adjuster whose range does not contain 0, which is what a setup means that leaves it out.',
  'marks-uneven': 'A bushing whose positions do not divide the circle evenly.',
  'shims-not-sorted': 'Shims are listed largest first.',
  'part-without-points': 'A spring or damper without points on an axle without a strut.',
  'rate-not-listed': "The spring's own rate is not one of those listed.",
  'spring-loose': 'The spring is loose at design.',
  'unused-point': 'A point that no rod, spring or damper uses.',
  'left-point-on-right': 'A left-hand point on the right of the middle plane.',
  'rack-without-ends': 'A rack without travel: lock is not known.',
  'loaded-radius-odd': 'A loaded radius that the rim, the tyre or any car contradicts.',
  'older-version': 'The file is of an older version; it was brought up to this one in memory.',
} as const satisfies Readonly<Record<string, string>>;

export type WarningCode = keyof typeof WARNING_CODES;
