/** Every code of a warning that a row of readings can carry, for the guide. Codes never change their meaning. */
export const ROW_WARNING_CODES = {
  'spring-force-from-weight':
    'The file gives no lengths of the spring: its force is that of the sprung weight it carries where the car stands.',
  'toe-reset-out-of-range': 'The toe that the setup asks for needs its adjuster outside the range that the file gives.',
  'rack-past-end': 'The rack is asked past the travel that the file gives it. It is computed as asked.',
  'travel-past-end':
    "A wheel is asked past the damper's solid or full length, or past the axle's travel where no damper says it. It is computed as asked.",
} as const satisfies Readonly<Record<string, string>>;

export type RowWarningCode = keyof typeof ROW_WARNING_CODES;
