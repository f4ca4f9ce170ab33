import { useState } from 'react';
import { csvOf } from '../curves/curveCsv';
import { saveFile } from '../look/saveFile';
import { useFailureWords } from '../readings/useFailureWords';
import { useWindow } from '../shell/benchContext';
import { tabbed, unreachedTable, type PlainTable } from './lengthTables';
import { keptName } from '../state/carTitle';

interface KeepTableProps {
  /** what is in it, for the file's name: "lengths" */
  readonly name: string;
  readonly table: () => PlainTable;
  /** of which setup its numbers are; of that on the bench where it is left out */
  readonly setup?: string;
  /** its numbers are of the position on the bench: where that cannot be reached the file says so instead */
  readonly isOfPosition?: true;
}

/** A table to the clipboard for a spreadsheet, or to a CSV file. */
export const KeepTable = ({ name, table: tableOf, setup, isOfPosition }: KeepTableProps) => {
  const { store } = useWindow();
  const failure = useFailureWords();
  const unreached = isOfPosition ? failure : null;
  const table = (): PlainTable => (unreached ? unreachedTable(tableOf(), `${unreached.title} ${unreached.detail}`) : tableOf());
  const [said, setSaid] = useState('');
  const copy = async () => {
    try {
      await navigator.clipboard.writeText(tabbed(table()));
      setSaid('Copied');
    } catch {
      setSaid('The browser did not let the clipboard be written. Use CSV.');
    }
  };
  const save = () => {
    const { heads, rows } = table();
    saveFile(`${keptName(store.getState(), name, setup)}.csv`, new Blob([csvOf([heads, ...rows])], { type: 'text/csv' }));
  };
  return (
    <span className="keeptable">
      <span role="status">{said}</span>
      <button type="button" className="button" aria-label={`Copy ${name}`} onClick={() => void copy()}>
        Copy
      </button>
      <button type="button" className="button" aria-label={`Save ${name} as CSV`} onClick={save}>
        CSV
      </button>
    </span>
  );
};
