import { access, readFile, readdir } from "node:fs/promises";
import { isAbsolute, join } from "node:path";
import type { KernelSpec } from "../kernelSpec.js";
import type { Finding } from "./Finding.js";

const mend = "npx underfoot kernel install";
const what = "Kernel spec";

async function specIn(folder: string): Promise<KernelSpec | null> {
  try {
    const spec: unknown = JSON.parse(await readFile(join(folder, "kernel.json"), "utf8"));
    const fits = typeof spec === "object" && spec !== null && "argv" in spec && Array.isArray(spec.argv);
    return fits ? (spec as KernelSpec) : null;
  } catch {
    return null;
  }
}

async function isThere(path: string): Promise<boolean> {
  return access(path).then(
    () => true,
    () => false,
  );
}

/**
 * Whether Jupyter, which looks in these data folders in this order, finds a kernel named `tslab` that will start: with absolute paths
 * to programs that are there. A kernel of the same name that lies earlier hides later ones.
 */
export async function kernelFinding(folders: readonly string[]): Promise<Finding> {
  for (const folder of folders) {
    const kernels = join(folder, "kernels");
    const names = await readdir(kernels).catch((): string[] => []);
    if (!names.includes("tslab")) continue;
    const path = join(kernels, "tslab", "kernel.json");
    const spec = await specIn(join(kernels, "tslab"));
    if (spec === null) return { what, good: false, found: `${path} cannot be read`, mend };
    const programs = spec.argv.slice(0, Math.max(1, spec.argv.indexOf("kernel")));
    if (!isAbsolute(programs[0] ?? "")) {
      return {
        what,
        good: false,
        found: `${path} names "${programs[0] ?? ""}" without its folder; other programs do not find it`,
        mend,
      };
    }
    for (const program of programs) {
      if (!(await isThere(program))) return { what, good: false, found: `${path} names ${program}, which is not there`, mend };
    }
    return { what, good: true, found: path, mend: null };
  }
  return { what, good: false, found: "Jupyter knows no TypeScript kernel", mend };
}
