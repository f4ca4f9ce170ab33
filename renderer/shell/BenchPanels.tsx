import { Segments } from '../look/controls/Segments';

export type BenchPanel = 'view' | 'readings' | 'curves' | 'adjusters';

const PANELS: readonly { readonly name: BenchPanel; readonly label: string }[] = [
  { name: 'view', label: 'View' },
  { name: 'readings', label: 'Readings' },
  { name: 'curves', label: 'Curves' },
  { name: 'adjusters', label: 'All adjusters' },
];

interface BenchPanelsProps {
  readonly chosen: BenchPanel;
  readonly onChoose: (panel: BenchPanel) => void;
}

/** In a narrow window: which of the bench's panels is in sight. */
export const BenchPanels = ({ chosen, onChoose }: BenchPanelsProps) => (
  <div className="panels">
    <Segments label="Panel" options={PANELS} chosen={chosen} onChoose={onChoose} />
  </div>
);
