/** What an answer has to say beside its numbers, in the words of the command line. */
export const FitUpWarnings = ({ warnings }: { readonly warnings: readonly { readonly message: string }[] }) =>
  warnings.map(({ message }) => (
    <p key={message} className="fitupnote watch">
      {message}
    </p>
  ));
