/**
 * Numbers of the planner that have no unit in their name, and need none: counts and indexes, days of the year, factors and ratios, formula
 * symbols explained in their doc comment, and amounts whose unit stands in a field beside them. A new name is added here on purpose, or gets its unit.
 */
export const bareNames: ReadonlySet<string> = new Set(
  `
    onHand onTheWay otherPackages K2O N P2O5 afterDry afterWet allowance amount applications areaAt at availablePackages bagPorosity bareReduction
    barredCrop barredFamilies beds bedsInRow bestLeast bestMost block bound budget by canopyFactor cans cap carbonToNitrogen
    caution cells cellsPerTray clay closeEnough coefficient column confidence contract contractSold correlation cost counts
    crop crops cropsFit cropsGrown curvature date daysInBand daysShort decides delivered demand departures depthOfDischarge
    digits draws dryDays early emissionUniformity emitter emitterExponent emitterPower emitters emittersPerPlant evaporation
    exact expected exponent exposure factor fallsBy family feasiblePlans fillsPerDay firstColumn firstDay firstHarvestWeek
    firstMonday fit flow freezeYears from fromDay fromPackages fromWeek gap gapGoal group groupRow groups harvest harvested
    head heightToWidth high i iterations kcb kcbMid krs late least leastMiss leastOverMeanFlow leastShort left line loads
    loam low lower lowestKs max mean median minutes miss moneyScale month months monthsSince most mostCrops mostPlants
    mostSuppliers mostTotal moves need next noSupport nodeLimit noonHeightSine now number objective offset option ordered
    over packageAmount packages part perRow perWeek phosphateTimesNeed plantings plantsPerRow position price
    proteinPerNitrogen quantity quarters randomSeed ratio received record refills refused relativeGap resting returned
    reynolds row rows runsPerDay sale sand scale scoops seed seedsPerHole sequence short shutoff size slope sold splitAt
    spoons square startWeek staticLift station stations step stillWanted stressDays strips sweeps teaParts teaspoons to toDay
    toWeek tooDark tooEarly tooShallow total traces trips turnings turns typical u under unit units unknown unserved upper v
    value walks wallFactor wanted wantedTurnings waterParts weighed weight wetAfterDry wetAfterWet wholeFills worstYear
    yearDay yields zone
  `
    .trim()
    .split(/\s+/),
);
