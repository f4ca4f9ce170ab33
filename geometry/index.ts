/**
 * Jounce's geometry: from a car's pickup points and the positions of its adjusters to every reading.
 * Values in, values out: no I/O, no clock, no globals. Millimetres and radians inside; degrees in the car file.
 */

// The car file
export { parseCar, parseCarBytes } from './setup/readCar';
export type { BadCarFile, ParsedCar } from './car/parseCar';
export { formatPath, type Fault, type Path, type Warning } from './car/fault';
export { placesOf, type LineAndColumn } from './car/text/linesAndColumns';
export { FAULT_CODES } from './car/faultCodes';
export { WARNING_CODES } from './car/warningCodes';
export { carFileSchema } from './car/carFileSchema';
export { linkCarriersOf, partCarriersOf, SPINNING } from './car/rules/fitUpRules';
export { contradictionsIn, type Contradiction, type PlaceWanted } from './car/rules/contradictions';
export { serializeCar } from './car/serializeCar';
export type {
  AdjusterDocument,
  AdjusterKind,
  AntiRollBarDocument,
  AxleDocument,
  AxleName,
  BodyDocument,
  CarDocument,
  ClampEccentricDocument,
  DamperDocument,
  DriveShaftDocument,
  EccentricBoltDocument,
  LengthUnit,
  LimitDocument,
  MassDocument,
  OffsetBushingDocument,
  PerchDocument,
  Seat,
  SectionDocument,
  SeenFrom,
  SetupAxleDocument,
  SetupDocument,
  SideName,
  SideSettings,
  SlideDocument,
  SpringDocument,
  SteeringDocument,
  ToleranceDocument,
  Triple,
  TurnbuckleDocument,
  WheelDocument,
} from './car/document';

// From file to car
export { toMechanism } from './car/toMechanism';
export type { Adjuster, AxleMechanism, CarMechanism } from './car/mechanism';
export { findSetup, setupNames } from './setup/setups';
export { settingOf, withAxleValue, withSetting, type Sides } from './setup/setupEdits';
export { cleanSetting, realSettings, stepScaleOf, type StepScale } from './adjusters/stepScale';
export { assembleCar, type AssembledAxle, type AssembledCar } from './setup/assembleCar';
export type { AssembledSide } from './setup/assembleSide';
export type { ToeReset } from './setup/setToe';
export { judgeMechanism } from './setup/judgeMechanism';

// Readings
export {
  readingsOfAxle,
  readingsOfCar,
  sweepAxle,
  sweepCar,
  sweepReadings,
  type CarReadings,
  type SomeReadings,
} from './readings/readings';
export type { AxleReadings, AxleRow, CornerReadings, PerSide, Position, RowWarning, WholeCarReadings } from './readings/rows';
export { ROW_WARNING_CODES } from './readings/rowWarningCodes';
export { judgeLimits, type LimitJudgement } from './setup/judgeLimits';
export { CATALOGUE, CONTRACT_UNITS, findReading, readingsOf } from './readings/catalogue';
export { SYMBOLS, type Component, type Quantity, type ReadingEntry, type ReadingOwner } from './readings/readingEntry';
export {
  differenceOfReadings,
  inContractUnits,
  numberNamesOf,
  numbersOf,
  readingsInContractUnits,
  valueInContractUnits,
  type ReadingValue,
  type ReadingValues,
} from './readings/contractUnits';

// Studies
export { mattersOf, setWithin } from './car/tolerances';
export { influence, type Influence, type InfluenceQuestion, type InfluenceRow } from './studies/influence';
export { carNumberNames, changesBetween, type CarNumber, type Numbers } from './studies/carNumbers';
export { compare, type ComparedNumbers, type ComparedSetup, type Comparison } from './studies/compare';
export type { AskedToe } from './studies/toeReset';
export { turnedByReset } from './studies/turnedByReset';
export { resolveQuestion, type Question, type Wanted } from './studies/question';
export { MOST_TRIED, reach, type ReachAnswer } from './studies/reach';
export type { ReachAnswerRow } from './studies/reachAnswers';
export { reachNow } from './studies/reachNow';
export type { Help } from './studies/reachHelp';
export type { BrokenLimit } from './studies/brokenLimits';
export { ways } from './studies/ways';
export type { Reached } from './studies/tried';
export type { Wall, Way, Ways, WaysQuestion } from './studies/waysQuestion';
export { sweep, type Sweep, type SweepQuestion, type SweptRow } from './studies/sweep';
export { sweepCsvLines, type CsvAxle, type CsvReadings, type CsvRow, type CsvWholeCar } from './studies/sweepCsv';
export { positionOf, stepsBetween, type AskedPosition } from './studies/askedPosition';
export { LIST_COLUMNS, positionsOfList, readPositionList, type BadPositionList } from './studies/positionList';
export {
  map,
  type MapAnswer,
  type MapAxis,
  type MapLimit,
  type MapQuestion,
  type MapReading,
  type MapValues,
} from './studies/map';
export { answerStudy, leadStudy, type Round, type Study } from './studies/study';
export { openStudy, type StudyAnswers, type StudyOrder } from './studies/order';
export { handOut, shareOut, type Hand } from './studies/crew';
export { createStudyWorker, type FromWorker, type ToWorker } from './studies/worker';
export { withToeReset } from './studies/toeReset';
export type {
  AskedStudy,
  AtDocument,
  CompareQuestionDocument,
  GaugesQuestionDocument,
  InfluenceQuestionDocument,
  KeptQuestionDocument,
  MapQuestionDocument,
  MayDocument,
  MotionName,
  OverDocument,
  QuestionDocument,
  SweepQuestionDocument,
  WantedDocument,
  WaysQuestionDocument,
} from './car/questionDocument';

// Fit-up: what touches
export type { ClearanceAnswer, ClearanceQuestion } from './fitup/clearance/clearance';
export type { LeastSpare } from './fitup/clearance/leastGap';
export type { ClearanceRow, ClearanceVerdict } from './fitup/clearance/pairRow';
export type { Attitude, GroundRow, GroundStance } from './fitup/overGround/overGround';
export { MOST_TRIANGLES, readStl, type StlFault } from './fitup/meshes/readStl';
export { openEdges } from './fitup/meshes/closedMesh';
export { openMeshWarning } from './fitup/meshes/openMeshes';
export { kindWarnings } from './fitup/partWarnings';
export type { MeshFiles } from './fitup/meshes/partMeshes';
export type { MeshLibrary, MeshSearch, Triangles } from './fitup/shapes/mesh';
export type { Remedy as ClearanceRemedy } from './fitup/clearance/remedies';
export { drawnParts, type DrawnPart, type DrawnShape } from './fitup/drawnParts';

// Fit-up: the space that moving parts sweep
export {
  sweptSpace,
  sweptSpaceSteps,
  type ClosedMesh,
  type KeepOut,
  type KeepOutQuestion,
  type NoKeepOut,
} from './fitup/keepOut/sweptSpace';
export { axisLine, HATCHED, offWords, titleOf, type TemplateDrawing } from './fitup/template/drawing';
export { seatNames, type Box as PaperBox } from './fitup/template/labels';
export { paperPlane, seenFrom, type PaperPlane } from './fitup/template/plane';
export { sectionOf, type Outline } from './fitup/template/section';
export { ofSide } from './fitup/template/sideOutlines';
export { templateDxf } from './fitup/template/templateDxf';
export { templateGround } from './fitup/template/templateGround';
export { templateOf } from './fitup/template/templateOf';
export { templatePages } from './fitup/template/templatePages';
export { TEMPLATE_PAPERS, tilesOf, type TemplatePaper } from './fitup/template/tiles';
export { binaryStl } from './fitup/meshes/binaryStl';

// Fit-up: what links carry
export {
  LOAD_WARNING_CODES,
  linkLoads,
  type CaseLoads,
  type CornerCarried,
  type LinkLoad,
  type LinkLoads,
  type LoadWarning,
} from './fitup/loads/linkLoads';
export { loadCaseOfG, loadCases, type LoadCase, type WheelForces } from './fitup/loads/loadCase';
export { loadArrows, type ArrowView, type LoadArrow } from './fitup/loads/loadArrows';
export type { Bending, LinkEnd, LinkKind } from './fitup/loads/linkRow';
export type { Buckling } from './fitup/loads/buckling';
export type { AxleLoadDocument, LoadCaseDocument, WheelLoadDocument } from './car/loadDocument';

// Fit-up: tilt of joints, stroke, shafts, hoses and threads
export { fitUpCorners, envelopeRows, type EnvelopeRow, type FitUpCorner, type StoodSetup } from './fitup/corners';
export { jointTilts, type JointRow } from './fitup/joints/jointTilts';
export { strokeRows, type StrokeRow } from './fitup/stroke/stroke';
export { THREAD_LIMITS, threadsOf, type ThreadRow, type ThreadVerdict } from './fitup/stroke/threads';
export type { BarTwist } from './fitup/stroke/barTwist';
export type { ShaftRow } from './fitup/stroke/shaft';
export { spanEnds, type SpanRow } from './fitup/stroke/spans';
export {
  envelopeWarnings,
  FITUP_WARNING_CODES,
  jointWarnings,
  strokeWarnings,
  threadWarning,
  type FitUpWarning,
  type FitUpWarningCode,
} from './fitup/fitUpWarnings';

// What a shop's instruments show
export {
  acrossRim,
  bumpSteerGauge,
  stringGauge,
  swingGauge,
  type BumpSteerRow,
  type CasterSwing,
  type DialReadings,
  type StringReadings,
} from './studies/gauges';
export { correctForFloor, type FloorCorrection, type PerWheel, type UnevenFloor } from './studies/unevenFloor';

// Coordinates in and out
export { readPoints, MM_PER_POINT_UNIT, POINT_UNITS, type PointList, type PointRow, type PointUnit } from './points/readPoints';
export { AXIS_WORDS, CAR_AXES, frameOf, type AxesFailure, type AxisWord, type Frame, type FrameAxes } from './points/frameAxes';
export { rigidFit, type RigidFit, type RigidFitFailure } from './points/rigidFit';
export {
  bringPoints,
  DEFAULT_BRING,
  type BringFailure,
  type BringOptions,
  type Brought,
  type BroughtPoint,
  type BroughtRow,
  type DatumFit,
  type ReferencePoint,
} from './points/bringPoints';
export { bringFailureWords } from './points/bringFailureWords';
export { pointNamesOf, sideOfName } from './points/matchName';
export { takePoints, withRightPoints } from './points/takePoints';
export { designPoint, designPoints } from './points/designPoints';
export { placedPoints, pointsCsv, type PlacedPoint } from './points/placedPoints';
export { pathCsv, pointPath, positionOfAxle, type PathPlace } from './points/pointPath';

// Words
export { suggest } from './car/suggest';
export { SIGHT } from './words/sight';
export { clockSeen, hourWords, seenFromWords } from './words/clockWords';
export { fitterWords, fitterWordsOfSides, partSize, shimsFor, turnsText, type FitterWords } from './words/fitterWords';
export { nameOfKey } from './words/nameOfKey';
export { CLEARANCE_CAUTIONS, JOINT_CAUTIONS, KEEP_OUT_CAUTIONS, LOAD_CAUTIONS, STROKE_CAUTIONS } from './words/fitUpCautions';
export { filledWords, growthWords, ONE_PLANE, outsideWords } from './words/keepOutWords';
export { lockLostWords } from './words/lockLost';
export { shortPairWords } from './words/shortPair';
export { sideWords } from './words/sideWords';

// Drawings of the parts
export { partDrawing, PART_SIZE, type PartStanding } from './drawing/partDrawing';
export { heightPart, toePart } from './drawing/axleParts';
export type { Placement, Shape, ShapeRole } from './drawing/shape';

// The set-up sheet
export { describeSheet } from './sheet/describeSheet';
export { layOutSheet, PAPERS, printedPart, type Paper, type PaperName, type SheetPage } from './sheet/layout/layOutSheet';
export { pageSvg, SHEET_FAMILIES } from './sheet/html/pageSvg';
export { readableSheet } from './sheet/html/readableSheet';
export { sheetHtml, sheetTitle } from './sheet/html/sheetHtml';
export { printedSheet, type PrintedPath, type PrintedSheet } from './sheet/printedSheet';
export { lettersMissing, sheetFonts } from './sheet/typeface/typeface';
export { WHOLE_SHEET, type NamedSetup, type Sheet, type SheetParts, type SheetQuestion, type SheetSection } from './sheet/sheet';

// Numbers as people read them
export { formatNumber, formatShort, formatSigned } from './format/format';
export { lengthWords } from './format/lengthWords';
export { shownQuantity, shownReading, withUnit, type Measured, type ShownQuantity } from './format/shownQuantity';
export { STANDARD_UNITS, unitWords, type ShownUnits, type UnitChoice } from './format/unitChoice';

// Poses, for drawing and for bulk work
export { placeAxle, type PlacedAxle, type PlacedCorner } from './setup/place';
export {
  lengthsOf,
  pointPlaces,
  tapeBetween,
  type LengthKind,
  type PartLength,
  type PointPlace,
  type Tape,
} from './setup/lengths';
export { solvePoses, type CornerPositions, type PoseTable } from './corner/solveCorner';
export { MOTION_WIDTH } from './corner/motion';
export type { Corner } from './corner/corner';
export type { Failure } from './corner/failure';
export type { Result } from './core/result';
export type { Vector } from './core/vector';
export { toDegrees, toRadians, type Degrees, type Radians } from './core/angle';
