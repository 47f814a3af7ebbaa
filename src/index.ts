// The public face of the library, grouped by stage. This file only re-exports; `npm run docs` writes it.

// study: the words of the field
export type {
  FileKind,
  ColumnUse,
  FileLayout,
  InputFile,
  FlowCount,
  RecordFlow,
  IssueCount,
  DataReport,
} from "./study/DataReport.js";
export type { Foot } from "./study/Foot.js";
export type { FootVisit } from "./study/FootVisit.js";
export type { Gauge } from "./study/Gauge.js";
export type { GaugeDay } from "./study/GaugeDay.js";
export type { HorseStay } from "./study/HorseStay.js";
export type { Severity, Issue } from "./study/Issue.js";
export type { OutlinePoint } from "./study/OutlinePoint.js";
export type { GaugeDayRule, Settings } from "./study/Settings.js";
export type { Source } from "./study/Source.js";
export type { Study } from "./study/Study.js";
export { StudyError } from "./study/StudyError.js";
export type { TableKind } from "./study/TableKind.js";
export type { Yard } from "./study/Yard.js";
export type { YardChange } from "./study/YardChange.js";
export { dateOfDay } from "./study/dateOfDay.js";
export { dayNumber } from "./study/dayNumber.js";
export { defaultSettings } from "./study/defaultSettings.js";
export { settingRules } from "./study/settingRules.js";
export type { SettingRule } from "./study/settingRules.js";
export { version } from "./study/version.js";
export { withSettings } from "./study/withSettings.js";

// read: text to records and issues
export type { SetAsideFile, SetAsideRow, SetAsideSink } from "./read/SetAsideRow.js";
export { newStudyFiles } from "./read/newStudyFiles.js";
export type { NewFile } from "./read/newStudyFiles.js";
export { readStudy } from "./read/readStudy.js";
export type { ReadOptions } from "./read/readStudy.js";
export { studySchema } from "./read/studySchema.js";
export { studyVerdict } from "./read/studyVerdict.js";
export { whatToFillIn } from "./read/whatToFillIn.js";

// derive: more columns
export type { DueState, DueDate } from "./derive/DueDate.js";
export type {
  ExposureColumn,
  MissingExposureCode,
  MissingExposure,
  WeatherLinkage,
  ExposureBeforeVisit,
} from "./derive/ExposureBeforeVisit.js";
export type { MissingGrade, FootCase } from "./derive/FootCase.js";
export type { FootLook } from "./derive/FootLook.js";
export type { PlanePoint } from "./derive/PlanePoint.js";
export type { RainColumn, MissingRainCode, MissingRain, RainBeforeVisit } from "./derive/RainBeforeVisit.js";
export type { ShapeFlag } from "./derive/ShapeFlag.js";
export type { ShapeMeasure } from "./derive/ShapeMeasure.js";
export type { ShapeMeasureRow } from "./derive/ShapeMeasureRow.js";
export type { OutlineFault, TracedOutline } from "./derive/TracedOutline.js";
export type { TrimIntervalStatus, TrimInterval } from "./derive/TrimInterval.js";
export { ageClass } from "./derive/ageClass.js";
export type { AgeClass } from "./derive/ageClass.js";
export { antecedentPrecipitation } from "./derive/antecedentPrecipitation.js";
export type { AntecedentPrecipitationOptions, AntecedentPrecipitation } from "./derive/antecedentPrecipitation.js";
export { areaFromCircumference } from "./derive/areaFromCircumference.js";
export { asOfDate } from "./derive/asOfDate.js";
export { atLastVisit } from "./derive/atLastVisit.js";
export { dailyEvapotranspiration } from "./derive/dailyEvapotranspiration.js";
export type { WaterDay } from "./derive/dailyEvapotranspiration.js";
export { dailyRain } from "./derive/dailyRain.js";
export type { RainReading, DailyRain } from "./derive/dailyRain.js";
export { dampBeforeVisits } from "./derive/dampBeforeVisits.js";
export type { DampBeforeVisit } from "./derive/dampBeforeVisits.js";
export { dewDays } from "./derive/dewDays.js";
export type { DewDay } from "./derive/dewDays.js";
export { dewPoint } from "./derive/dewPoint.js";
export { doubleScores } from "./derive/doubleScores.js";
export type { DoubleScore } from "./derive/doubleScores.js";
export { dueDates } from "./derive/dueDates.js";
export { examination } from "./derive/examination.js";
export { expectedToeGrowth } from "./derive/expectedToeGrowth.js";
export type { ExpectedToeGrowth } from "./derive/expectedToeGrowth.js";
export { exposureBeforeVisits } from "./derive/exposureBeforeVisits.js";
export type { ExposureOptions } from "./derive/exposureBeforeVisits.js";
export { extraterrestrialRadiation } from "./derive/extraterrestrialRadiation.js";
export { footDays } from "./derive/footDays.js";
export type { FootDay } from "./derive/footDays.js";
export { footShapes } from "./derive/footShapes.js";
export type { FootShape } from "./derive/footShapes.js";
export { footShoeing } from "./derive/footShoeing.js";
export { frontHindContrasts } from "./derive/frontHindContrasts.js";
export type { FrontHindContrast } from "./derive/frontHindContrasts.js";
export { frontHindShape } from "./derive/frontHindShape.js";
export type { FrontHindShape } from "./derive/frontHindShape.js";
export { gapFindings } from "./derive/gapFindings.js";
export type { GapFinding } from "./derive/gapFindings.js";
export { gaugeGaps } from "./derive/gaugeGaps.js";
export type { GaugeGaps } from "./derive/gaugeGaps.js";
export { growthRates } from "./derive/growthRates.js";
export type { PublishedGrowthRate, GrowthRates } from "./derive/growthRates.js";
export { hargreavesEvapotranspiration } from "./derive/hargreavesEvapotranspiration.js";
export type { HargreavesDay } from "./derive/hargreavesEvapotranspiration.js";
export { heldToThreshold } from "./derive/heldToThreshold.js";
export { hoofShape } from "./derive/hoofShape.js";
export type { HoofShape } from "./derive/hoofShape.js";
export { horseCases } from "./derive/horseCases.js";
export type { HorseCase } from "./derive/horseCases.js";
export { horseVisits } from "./derive/horseVisits.js";
export type { HorseVisit } from "./derive/horseVisits.js";
export { lastAdmissibleDay } from "./derive/lastAdmissibleDay.js";
export { markGrowth } from "./derive/markGrowth.js";
export type { MarkGrowth } from "./derive/markGrowth.js";
export { markOrigins } from "./derive/markOrigins.js";
export type { MarkOrigin } from "./derive/markOrigins.js";
export { markTimes } from "./derive/markTimes.js";
export type { MarkTimes } from "./derive/markTimes.js";
export { markTracks } from "./derive/markTracks.js";
export type { MarkTrack, MarkSighting } from "./derive/markTracks.js";
export { monthlyRain } from "./derive/monthlyRain.js";
export type { MonthRain } from "./derive/monthlyRain.js";
export { outlineMeasures } from "./derive/outlineMeasures.js";
export type { OutlineMeasures } from "./derive/outlineMeasures.js";
export { pairChanges } from "./derive/pairChanges.js";
export type { PairChange } from "./derive/pairChanges.js";
export { rainBands } from "./derive/rainBands.js";
export type { RainBand } from "./derive/rainBands.js";
export { rainBeforeVisits } from "./derive/rainBeforeVisits.js";
export { rainIndices } from "./derive/rainIndices.js";
export type { RainIndicesOptions, RainIndices } from "./derive/rainIndices.js";
export { rainNormals } from "./derive/rainNormals.js";
export type { RainNormal, RainNormalsOptions } from "./derive/rainNormals.js";
export { repeatedMeasures } from "./derive/repeatedMeasures.js";
export type { RepeatedMeasure } from "./derive/repeatedMeasures.js";
export { repeatedTracings } from "./derive/repeatedTracings.js";
export type { RepeatedTracing } from "./derive/repeatedTracings.js";
export { requireGrowthRates } from "./derive/requireGrowthRates.js";
export { ringArea } from "./derive/ringArea.js";
export { ringCrossing } from "./derive/ringCrossing.js";
export { rollingRain } from "./derive/rollingRain.js";
export type { RollingRain } from "./derive/rollingRain.js";
export { seasonOf } from "./derive/seasonOf.js";
export type { Season } from "./derive/seasonOf.js";
export { shapeChanges } from "./derive/shapeChanges.js";
export type { ShapeChange } from "./derive/shapeChanges.js";
export { shapeDefinitions } from "./derive/shapeDefinitions.js";
export type { ShapeDefinition } from "./derive/shapeDefinitions.js";
export { shapeFlags } from "./derive/shapeFlags.js";
export type { ShapeFlags } from "./derive/shapeFlags.js";
export { shapeMeasures } from "./derive/shapeMeasures.js";
export { shapeThresholds } from "./derive/shapeThresholds.js";
export type { PublishedThreshold, ShapeThreshold } from "./derive/shapeThresholds.js";
export { shapeValues } from "./derive/shapeValues.js";
export { shoeLives } from "./derive/shoeLives.js";
export type { ShoeLife } from "./derive/shoeLives.js";
export { soilWetness } from "./derive/soilWetness.js";
export type { SoilWetnessOptions, SoilWetness } from "./derive/soilWetness.js";
export { stayAt } from "./derive/stayAt.js";
export { thrushCases } from "./derive/thrushCases.js";
export { thrushChanges } from "./derive/thrushChanges.js";
export type { ThrushChange } from "./derive/thrushChanges.js";
export { toeGrowth } from "./derive/toeGrowth.js";
export type { ToeGrowth } from "./derive/toeGrowth.js";
export { tracedOutlines } from "./derive/tracedOutlines.js";
export type { TracedOutlinesOptions } from "./derive/tracedOutlines.js";
export { trimIntervals } from "./derive/trimIntervals.js";
export { unevenPairs } from "./derive/unevenPairs.js";
export type { UnevenPair } from "./derive/unevenPairs.js";
export { vetFlags } from "./derive/vetFlags.js";
export type { VetFlagRule, VetFlag } from "./derive/vetFlags.js";
export { visitGauges } from "./derive/visitGauges.js";
export type { VisitGauge } from "./derive/visitGauges.js";

// estimate: numbers with their uncertainty
export type { ChiSquareTest } from "./estimate/ChiSquareTest.js";
export type { ClassificationTable } from "./estimate/ClassificationTable.js";
export type { ClusterCount } from "./estimate/ClusterCount.js";
export type { Coefficient } from "./estimate/Coefficient.js";
export type { Dropped } from "./estimate/Dropped.js";
export type { EffectInterval } from "./estimate/EffectInterval.js";
export { EstimateError } from "./estimate/EstimateError.js";
export type { EstimateErrorCode } from "./estimate/EstimateErrorCode.js";
export type { FootLandmarks } from "./estimate/FootLandmarks.js";
export type { Interval } from "./estimate/Interval.js";
export type { OutlineOptions } from "./estimate/OutlineOptions.js";
export type { Point } from "./estimate/Point.js";
export type { Points } from "./estimate/Points.js";
export type { PrevalenceUnit, PrevalenceEstimate } from "./estimate/PrevalenceEstimate.js";
export type { PrevalenceRow } from "./estimate/PrevalenceRow.js";
export type { ProportionInterval } from "./estimate/ProportionInterval.js";
export type { RatioInterval } from "./estimate/RatioInterval.js";
export type { RegressionFit } from "./estimate/RegressionFit.js";
export type { SurvivalTime } from "./estimate/SurvivalTime.js";
export type { Term } from "./estimate/Term.js";
export type { TwoByTwo } from "./estimate/TwoByTwo.js";
export { agrestiCoullInterval } from "./estimate/agrestiCoullInterval.js";
export { attributableFraction } from "./estimate/attributableFraction.js";
export type { ExposureRow, AttributableFraction } from "./estimate/attributableFraction.js";
export { autocorrelation } from "./estimate/autocorrelation.js";
export { benjaminiHochberg } from "./estimate/benjaminiHochberg.js";
export { blandAltman } from "./estimate/blandAltman.js";
export type { LimitsOfAgreement } from "./estimate/blandAltman.js";
export { breslowDay } from "./estimate/breslowDay.js";
export { clopperPearsonInterval } from "./estimate/clopperPearsonInterval.js";
export { clusterBootstrap } from "./estimate/clusterBootstrap.js";
export type { BootstrapEstimate } from "./estimate/clusterBootstrap.js";
export { clusterCorrelation } from "./estimate/clusterCorrelation.js";
export type { ClusterCorrelation } from "./estimate/clusterCorrelation.js";
export { clusteredProportion } from "./estimate/clusteredProportion.js";
export type { ClusteredIntervalKind, ClusteredProportion } from "./estimate/clusteredProportion.js";
export { cohenKappa } from "./estimate/cohenKappa.js";
export type { KappaWeights, KappaEstimate } from "./estimate/cohenKappa.js";
export { conditionalOddsRatio } from "./estimate/conditionalOddsRatio.js";
export type { ConditionalOddsRatio } from "./estimate/conditionalOddsRatio.js";
export { crossValidatedLogistic } from "./estimate/crossValidatedLogistic.js";
export type { CrossValidatedLogisticOptions, CrossValidatedLogistic } from "./estimate/crossValidatedLogistic.js";
export { daysCovered } from "./estimate/daysCovered.js";
export type { CoveredPeriod, DaysCovered } from "./estimate/daysCovered.js";
export { describe } from "./estimate/describe.js";
export type { Description } from "./estimate/describe.js";
export { designMatrix } from "./estimate/designMatrix.js";
export type { DesignOptions, DesignMatrix } from "./estimate/designMatrix.js";
export { donnerTest } from "./estimate/donnerTest.js";
export type { DonnerGroup, DonnerTest } from "./estimate/donnerTest.js";
export { ellipticFourier } from "./estimate/ellipticFourier.js";
export type { FourierHarmonic, EllipticFourier, FourierOptions } from "./estimate/ellipticFourier.js";
export { fisherExact } from "./estimate/fisherExact.js";
export type { FisherExactTest } from "./estimate/fisherExact.js";
export { fisherExactTable } from "./estimate/fisherExactTable.js";
export type { FisherExactTableTest } from "./estimate/fisherExactTable.js";
export { fitGee } from "./estimate/fitGee.js";
export type { GeeOptions, GeeCoefficient, GeeFit } from "./estimate/fitGee.js";
export { fitLinear } from "./estimate/fitLinear.js";
export type { LinearOptions, LinearFit } from "./estimate/fitLinear.js";
export { fitLogistic } from "./estimate/fitLogistic.js";
export type { LogisticOptions, OddsCoefficient, LogisticFit } from "./estimate/fitLogistic.js";
export { fitMixedLinear } from "./estimate/fitMixedLinear.js";
export type { MixedLinearOptions, GroupSpread, MixedLinearFit } from "./estimate/fitMixedLinear.js";
export { fitMixedLogistic } from "./estimate/fitMixedLogistic.js";
export type { MixedLogisticOptions, Convergence, MixedLogisticFit } from "./estimate/fitMixedLogistic.js";
export { fitPoisson } from "./estimate/fitPoisson.js";
export type { PoissonOptions, RateCoefficient, PoissonFit } from "./estimate/fitPoisson.js";
export { frogToSoleArea } from "./estimate/frogToSoleArea.js";
export type { FrogToSoleArea } from "./estimate/frogToSoleArea.js";
export { generalProcrustes } from "./estimate/generalProcrustes.js";
export type { GeneralProcrustes } from "./estimate/generalProcrustes.js";
export { holm } from "./estimate/holm.js";
export { incidenceRate } from "./estimate/incidenceRate.js";
export type { RateInterval } from "./estimate/incidenceRate.js";
export { intraclassCorrelation } from "./estimate/intraclassCorrelation.js";
export type { IccForm, IccEstimate } from "./estimate/intraclassCorrelation.js";
export { kaplanMeier } from "./estimate/kaplanMeier.js";
export type { SurvivalStep, SurvivalQuantile, SurvivalCurve } from "./estimate/kaplanMeier.js";
export { linearDiscriminant } from "./estimate/linearDiscriminant.js";
export type {
  DiscriminantOptions,
  ClassPrediction,
  DiscriminantRow,
  DiscriminantAxis,
  LinearDiscriminant,
} from "./estimate/linearDiscriminant.js";
export { logRank } from "./estimate/logRank.js";
export type { LogRankTest } from "./estimate/logRank.js";
export { mantelHaenszel } from "./estimate/mantelHaenszel.js";
export type { MantelHaenszelMeasure, MantelHaenszelEstimate } from "./estimate/mantelHaenszel.js";
export { marginalPrevalence } from "./estimate/marginalPrevalence.js";
export type { MarginalPrevalence } from "./estimate/marginalPrevalence.js";
export { mcnemar } from "./estimate/mcnemar.js";
export type { McNemarTest } from "./estimate/mcnemar.js";
export { meanInterval } from "./estimate/meanInterval.js";
export type { MeanInterval } from "./estimate/meanInterval.js";
export { medialLateralAsymmetry } from "./estimate/medialLateralAsymmetry.js";
export type { SideWidths, MedialLateralAsymmetry } from "./estimate/medialLateralAsymmetry.js";
export { midPInterval } from "./estimate/midPInterval.js";
export { minimumDetectableChange } from "./estimate/minimumDetectableChange.js";
export { mirrored } from "./estimate/mirrored.js";
export { newcombeDifference } from "./estimate/newcombeDifference.js";
export type { ProportionDifference } from "./estimate/newcombeDifference.js";
export { newcombePairedDifference } from "./estimate/newcombePairedDifference.js";
export type { PairedDifference } from "./estimate/newcombePairedDifference.js";
export { outlineFromFourier } from "./estimate/outlineFromFourier.js";
export { outlineMoments } from "./estimate/outlineMoments.js";
export type { OutlineMoments } from "./estimate/outlineMoments.js";
export { prevalence } from "./estimate/prevalence.js";
export type { Prevalence } from "./estimate/prevalence.js";
export { prevalenceBy } from "./estimate/prevalenceBy.js";
export type { PrevalenceGroup } from "./estimate/prevalenceBy.js";
export { procrustes } from "./estimate/procrustes.js";
export type { ProcrustesFit } from "./estimate/procrustes.js";
export { raoScott } from "./estimate/raoScott.js";
export type { RaoScottGroup, RaoScottTest } from "./estimate/raoScott.js";
export { rateRatio } from "./estimate/rateRatio.js";
export type { RateRatio } from "./estimate/rateRatio.js";
export { referenceBand } from "./estimate/referenceBand.js";
export type { ReferencePercentile, ReferenceBand } from "./estimate/referenceBand.js";
export { resampledOutline } from "./estimate/resampledOutline.js";
export { shapeDifference } from "./estimate/shapeDifference.js";
export type { ShapePair, ShapeDifference } from "./estimate/shapeDifference.js";
export { shapePrincipalComponents } from "./estimate/shapePrincipalComponents.js";
export type { ShapeComponent, ShapePrincipalComponents } from "./estimate/shapePrincipalComponents.js";
export { standardErrorOfMeasurement } from "./estimate/standardErrorOfMeasurement.js";
export type { MeasurementError } from "./estimate/standardErrorOfMeasurement.js";
export { tableOf } from "./estimate/tableOf.js";
export type { TableMeasures } from "./estimate/tableOf.js";
export { toeTaper } from "./estimate/toeTaper.js";
export type { ToeTaper } from "./estimate/toeTaper.js";
export { trendTest } from "./estimate/trendTest.js";
export type { TrendTest } from "./estimate/trendTest.js";
export { trueFromApparent } from "./estimate/trueFromApparent.js";
export type { TruePrevalence } from "./estimate/trueFromApparent.js";
export { waldInterval } from "./estimate/waldInterval.js";
export { waldTest } from "./estimate/waldTest.js";
export type { WaldTest } from "./estimate/waldTest.js";
export { wilsonInterval } from "./estimate/wilsonInterval.js";
export { woolfTest } from "./estimate/woolfTest.js";

// simulate: herds whose truth is known
export type { NestedDesign } from "./simulate/NestedDesign.js";
export type { SimulationRuns } from "./simulate/SimulationRuns.js";
export { coverageOf } from "./simulate/coverageOf.js";
export type { StudiedInterval, Coverage } from "./simulate/coverageOf.js";
export { powerOf } from "./simulate/powerOf.js";
export type { Power } from "./simulate/powerOf.js";
export { simulateDistrict } from "./simulate/simulateDistrict.js";
export type { SimulateDistrictOptions, SimulatedDistrict } from "./simulate/simulateDistrict.js";
export { simulateNestedStudy } from "./simulate/simulateNestedStudy.js";
export type { SimulatedFoot } from "./simulate/simulateNestedStudy.js";

// chart: drawings of finished numbers
export type { Chart } from "./chart/Chart.js";
export type { ProportionRow } from "./chart/ProportionRow.js";
export type { TableCell, TableColumn, Table } from "./chart/Table.js";
export { feetOverTimeChart } from "./chart/feetOverTimeChart.js";
export type { FeetOverTimeRow, FeetOverTimeOptions } from "./chart/feetOverTimeChart.js";
export { frontHindShapeChart } from "./chart/frontHindShapeChart.js";
export type { FrontHindRow, FrontHindShapeOptions } from "./chart/frontHindShapeChart.js";
export { intervalKeepingChart } from "./chart/intervalKeepingChart.js";
export type { IntervalKeepingRow, IntervalKeepingOptions } from "./chart/intervalKeepingChart.js";
export { prevalenceByBandChart } from "./chart/prevalenceByBandChart.js";
export type { BandRow, PrevalenceByBandOptions } from "./chart/prevalenceByBandChart.js";
export { rainAndThrushChart } from "./chart/rainAndThrushChart.js";
export type { MonthRow, RainAndThrushOptions } from "./chart/rainAndThrushChart.js";

// answer: questions and answers
export type { Method, Answer, NotEnoughData } from "./answer/Answer.js";
export type { Reader, Focus, Question } from "./answer/Question.js";
export type { Review } from "./answer/Review.js";
export { dueAndOver } from "./answer/dueAndOver.js";
export { dueTable } from "./answer/dueTable.js";
export { feetSeen } from "./answer/feetSeen.js";
export { findingsForTheVet } from "./answer/findingsForTheVet.js";
export type { FindingsForTheVetOptions } from "./answer/findingsForTheVet.js";
export { forTheVet } from "./answer/forTheVet.js";
export { frontAndHind } from "./answer/frontAndHind.js";
export { generalCautions } from "./answer/generalCautions.js";
export { horseDiary } from "./answer/horseDiary.js";
export { horseHistory } from "./answer/horseHistory.js";
export type { HorseHistoryOptions } from "./answer/horseHistory.js";
export { horseInWords } from "./answer/horseInWords.js";
export { horseMeasures } from "./answer/horseMeasures.js";
export { intervalsKept } from "./answer/intervalsKept.js";
export { overTheDate } from "./answer/overTheDate.js";
export { provenance } from "./answer/provenance.js";
export { seasonReview } from "./answer/seasonReview.js";
export { settingsTable } from "./answer/settingsTable.js";
export { thrushAfterRain } from "./answer/thrushAfterRain.js";
export { thrushByMonth } from "./answer/thrushByMonth.js";
export { thrushNow } from "./answer/thrushNow.js";

// show: notebook output, pages, tables
export type { Page, Made } from "./show/Page.js";
export { dueEvents } from "./show/dueEvents.js";
export { duePage } from "./show/duePage.js";
export { horsePage } from "./show/horsePage.js";
export { reviewPage } from "./show/reviewPage.js";
export { show } from "./show/show.js";
export type { Displayable } from "./show/show.js";
export { toCalendar } from "./show/toCalendar.js";
export type { CalendarEvent, CalendarOptions } from "./show/toCalendar.js";
export { toCheckPage } from "./show/toCheckPage.js";
export type { CheckPage } from "./show/toCheckPage.js";
export { toCsv } from "./show/toCsv.js";
export { toFrame } from "./show/toFrame.js";
export type { Frame } from "./show/toFrame.js";
export { toHtmlPage } from "./show/toHtmlPage.js";
export { toPng } from "./show/toPng.js";
export type { PngOptions, Png } from "./show/toPng.js";
export { toReportJson } from "./show/toReportJson.js";
export { toReportText } from "./show/toReportText.js";
export { toSvg } from "./show/toSvg.js";
export type { SvgOptions } from "./show/toSvg.js";
export { toText } from "./show/toText.js";

// run: notebooks run by the kernel
export type { MimeBundle, NotebookOutput, CodeCell, TextCell, NotebookCell, Notebook } from "./run/Notebook.js";
export { NotebookError } from "./run/NotebookError.js";
export type { NotebookErrorCode, FailedCell, NotebookErrorDetails } from "./run/NotebookError.js";
export { kernelSpec } from "./run/kernelSpec.js";
export type { KernelSpec } from "./run/kernelSpec.js";
export { readNotebook } from "./run/readNotebook.js";
export { runNotebook } from "./run/runNotebook.js";
export type { RunOptions, NotebookRun } from "./run/runNotebook.js";
export { writeFileWhole } from "./run/writeFileWhole.js";
export { writeKernelSpec } from "./run/writeKernelSpec.js";
export { writeNotebook } from "./run/writeNotebook.js";
