/** One thing to be displayed, in several forms of which a notebook picks the best it can draw; keys are mime types. */
export interface MimeBundle {
  readonly data: Readonly<Record<string, unknown>>;
  readonly metadata: Readonly<Record<string, unknown>>;
}
