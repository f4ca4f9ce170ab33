/** A minus that stands for itself, and not in a word or between two. */
const MINUS = /(?<![\w-])-(?=\d)/g;

/** What is said of a fault: names of the file, which stand in back-ticks, as they stand there; numbers with a true minus. */
export const FaultWords = ({ said }: { readonly said: string }) =>
  said.split('`').map((part, index) =>
    index % 2 === 1 ? (
      <code key={index} className="filename">
        {part}
      </code>
    ) : (
      part.replaceAll(MINUS, '\u2212')
    ),
  );
