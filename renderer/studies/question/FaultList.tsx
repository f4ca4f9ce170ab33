interface FaultListProps<Field extends string> {
  /** stands before the ids, which the fields refer to */
  readonly idBase: string;
  readonly faults: Readonly<Partial<Record<Field, string>>>;
  /** stands before what is said of a field */
  readonly labels?: Readonly<Record<Field, string>>;
}

/** The id of the sentence that says what is wrong with a field; null where nothing is. */
export const faultIdOf = <Field extends string>(
  { idBase, faults }: Pick<FaultListProps<Field>, 'idBase' | 'faults'>,
  field: Field,
): string | null => (faults[field] === undefined ? null : `${idBase}-${field}`);

/** What is wrong with the fields of a question, a sentence each. */
export const FaultList = <Field extends string>({ idBase, faults, labels }: FaultListProps<Field>) =>
  (Object.keys(faults) as Field[]).map((field) => (
    <p key={field} id={`${idBase}-${field}`} className="qfault" role="alert">
      {labels === undefined ? faults[field] : `${labels[field]}: ${faults[field] ?? ''}.`}
    </p>
  ));
