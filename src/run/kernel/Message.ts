/** One message of the Jupyter messaging protocol, as far as a runner needs it. */
export interface Message {
  /** `msg_type` of the header. */
  readonly type: string;
  readonly id: string;
  /** Id of the request this message belongs to; null when it belongs to none. */
  readonly parentId: string | null;
  readonly content: Readonly<Record<string, unknown>>;
  /** Size of the content as it was sent. */
  readonly contentBytes: number;
}
