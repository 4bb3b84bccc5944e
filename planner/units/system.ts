/** The reader's units: US customary or metric. A setting of the farm; inside, every quantity is canonical. */
export type UnitSystem = 'us' | 'metric';
