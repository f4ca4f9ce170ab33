import type {
  AxleName,
  CarDocument,
  ClearanceAnswer,
  ClearanceQuestion,
  DrawnPart,
  EnvelopeRow,
  Failure,
  FitUpWarning,
  JointRow,
  KeepOut,
  KeepOutQuestion,
  LinkLoads,
  LoadCase,
  MeshFiles,
  NoKeepOut,
  PaperPlane,
  Result,
  SetupDocument,
  SideName,
  StrokeRow,
  TemplateDrawing,
  TemplatePaper,
  tilesOf,
  Vector,
} from '../../../geometry/index';

/** Setups by name, in the order of the file. */
export type NamedSetups = readonly (readonly [string, SetupDocument])[];

/** What fit-up asks, as plain data: it is answered on a thread of its own. */
export type FitUpOrder =
  | { readonly job: 'clearance'; readonly document: CarDocument; readonly question: ClearanceQuestion }
  | ({ readonly job: 'joints' } & OverSetups)
  | ({ readonly job: 'stroke' } & OverSetups)
  | {
      readonly job: 'loads';
      readonly document: CarDocument;
      readonly axles: readonly AxleName[];
      readonly setup: readonly [string, SetupDocument];
      /** from where the car stands; mm, degrees */
      readonly at: { readonly travel: number; readonly rack: number; readonly rollDeg: number };
      /** null: those of the file, or the program's own where it has none */
      readonly cases: readonly LoadCase[] | null;
    }
  | { readonly job: 'keepOut'; readonly document: CarDocument; readonly question: KeepOutQuestion }
  | {
      readonly job: 'template';
      readonly document: CarDocument;
      /** what was swept, over which setups, on which axle */
      readonly made: KeepOut;
      readonly setups: readonly string[];
      readonly axle: AxleName;
      readonly sides: readonly SideName[];
      /** point and normal on the left [mm]; the right has its mirror image */
      readonly plane: readonly number[];
      readonly paper: TemplatePaper;
    }
  | {
      readonly job: 'drawn';
      readonly document: CarDocument;
      readonly setup: readonly [string, SetupDocument];
      readonly axle: AxleName;
      readonly side: SideName;
      /** travel from design, or from where the car stands [mm]; with roll it is heave from there */
      readonly at: {
        readonly travel: number;
        readonly from: 'design' | 'standing';
        readonly rack: number;
        readonly rollDeg?: number;
      };
      readonly meshes: MeshFiles;
    };

/** The axles and the setups whose envelopes are looked at. */
export interface OverSetups {
  readonly document: CarDocument;
  readonly axles: readonly AxleName[];
  readonly setups: NamedSetups;
}

interface OverEnvelopes<Row> {
  readonly rows: readonly Row[];
  readonly envelope: readonly EnvelopeRow[];
  readonly warnings: readonly FitUpWarning[];
}

/** The parts of one corner, the ends of its hoses, and how far its wheel stands from design [mm]. */
export interface DrawnCorner {
  readonly parts: readonly DrawnPart[];
  readonly spans: Readonly<Record<string, readonly [Vector, Vector]>>;
  readonly standing: number;
}

/** The section of one side on its sheets, or why there is none. */
export type TemplateSide =
  | {
      readonly side: SideName;
      readonly drawing: TemplateDrawing;
      readonly plane: PaperPlane;
      /** how many sheets it takes, where they lie, or why so many are not printed: DXF is there all the same */
      readonly grid: ReturnType<typeof tilesOf>;
    }
  | { readonly side: SideName; readonly message: string };

/** What each job answers. Angles in rad, lengths in mm, forces in N: as the engine has them. */
export interface FitUpAnswers {
  readonly clearance: ClearanceAnswer;
  readonly joints: OverEnvelopes<JointRow>;
  readonly stroke: OverEnvelopes<StrokeRow>;
  readonly loads: LinkLoads;
  readonly keepOut: KeepOut | NoKeepOut;
  readonly template: readonly TemplateSide[];
  readonly drawn: DrawnCorner;
}

export type FitUpResult<Order extends FitUpOrder = FitUpOrder> = Result<FitUpAnswers[Order['job']], Failure>;

/** How far a job has come. */
export interface FitUpProgress {
  readonly doing: string;
  readonly done: number;
  readonly of: number;
}
