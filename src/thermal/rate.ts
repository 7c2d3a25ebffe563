/** How fast development goes at a temperature. Never below 0, with its exact antiderivative, so that the dose over any straight piece of a trace is exact. */
export interface RateModel {
  /** Share of the stage completed per day at this temperature. */
  ratePerDay(temperatureC: number): number;
  /** R with R' = rate: the dose over a straight piece from a to b in Δt days is (R(b) − R(a)) / (b − a) · Δt. */
  antiderivative(temperatureC: number): number;
}
