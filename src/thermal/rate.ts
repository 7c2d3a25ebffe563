// What every rate model is.

/** How fast development goes at a temperature. Never below 0, with its exact antiderivative, so that the dose over any straight piece of a trace is exact. */
export interface RateModel {
  /** Share of the stage completed per day at this temperature. */
  ratePerDay(temperatureC: number): number;
  /** R with R' = rate: the dose over a straight piece from a to b in Δt days is (R(b) − R(a)) / (b − a) · Δt. */
  antiderivative(temperatureC: number): number;
}

/** Temperatures that matter for a rate; null where the model has none. */
export interface Landmarks {
  /** At and below it nothing develops. */
  readonly lowerC: number | null;
  /** Where development is fastest; of a plateau its beginning. */
  readonly optimumC: number | null;
  /** At and above it nothing develops; under a horizontal or intermediate cutoff, where the rate stops rising. */
  readonly upperC: number | null;
}

/** A parameter outside its model's domain. */
export interface Fault {
  readonly field: string;
  /** What it should be, as the end of a sentence that begins with "the rate model's …". */
  readonly what: string;
}
