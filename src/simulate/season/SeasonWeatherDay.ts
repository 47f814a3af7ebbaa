/** Rain of one gauge on one day. */
export interface SeasonWeatherDay {
  readonly gaugeId: string;
  readonly date: string;
  readonly rainMm: number;
}
