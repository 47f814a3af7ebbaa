/** A connection file of the Jupyter protocol: where the kernel listens, and the key both sides sign with. */
export interface Connection {
  readonly transport: "tcp";
  readonly ip: "127.0.0.1";
  readonly shell_port: number;
  readonly iopub_port: number;
  readonly stdin_port: number;
  readonly control_port: number;
  readonly hb_port: number;
  readonly signature_scheme: "hmac-sha256";
  readonly key: string;
}
