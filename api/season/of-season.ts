/** The tables of plantings of which a season's rows alone are read, for `derivedRows`. */
export const ofSeason = (seasonId: string) => ({ planting: seasonId, planting_bed: seasonId });
