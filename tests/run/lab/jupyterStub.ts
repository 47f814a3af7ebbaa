import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

/** Puts a program into `folder` that answers as `jupyter-lab --version` does, or fails when the version is null. */
export function jupyterStub(folder: string, version: string | null): string {
  mkdirSync(folder, { recursive: true });
  const program = join(folder, "jupyter-lab");
  writeFileSync(program, version === null ? "#!/bin/sh\nexit 1\n" : `#!/bin/sh\necho ${version}\n`, { mode: 0o755 });
  return program;
}
