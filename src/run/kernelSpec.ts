/** A kernel specification of Jupyter: the content of a `kernel.json`. */
export interface KernelSpec {
  readonly argv: readonly string[];
  readonly display_name: string;
  readonly language: string;
  readonly interrupt_mode: "signal";
  readonly metadata: Readonly<Record<string, unknown>>;
}

/**
 * The kernel specification that starts the tslab kernel with absolute paths, so that programs which do not share this
 * shell's search path find it too. `node` is the path of the Node executable, `programs` those of the kernel's program and of what is run before it.
 * Source: Jupyter client documentation, "Kernel specs".
 */
export function kernelSpec(node: string, ...programs: readonly string[]): KernelSpec {
  return {
    argv: [node, ...programs, "kernel", "--config-path", "{connection_file}"],
    display_name: "TypeScript",
    language: "typescript",
    interrupt_mode: "signal",
    metadata: {},
  };
}
