import { randomUUID } from "node:crypto";
import { mkdir, open, realpath, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { writeRefusal } from "./writeRefusal.js";

/** The file a path stands for: where a symbolic link leads, else the path itself. */
async function fileBehind(path: string): Promise<string> {
  try {
    return await realpath(path);
  } catch {
    return path;
  }
}

/** Permission bits of the file that is replaced; null when there is none. */
async function permissionsOf(path: string): Promise<number | null> {
  try {
    return (await stat(path)).mode & 0o777;
  } catch {
    return null;
  }
}

async function writeThrough(path: string, data: string | Uint8Array, permissions: number | null): Promise<void> {
  const handle = await open(path, "wx");
  try {
    if (permissions !== null) await handle.chmod(permissions);
    await handle.writeFile(data);
    await handle.sync();
  } finally {
    await handle.close();
  }
}

/** Makes the new name last through a power cut, where the system lets a folder be synchronised. */
async function syncFolder(folder: string): Promise<void> {
  try {
    const handle = await open(folder, "r");
    try {
      await handle.sync();
    } finally {
      await handle.close();
    }
  } catch {
    // Windows does not open folders; the file itself is synchronised already.
  }
}

/**
 * Writes a file whole or not at all: to a new file beside it, through to the disk, then renamed into place. Whoever opens
 * the path sees the old content or the new, never a part, also when the program is killed half-way (a `.tmp` file may then be
 * left beside it). Folders on the way are made. A symbolic link stays a link, and the permissions of an old file stay.
 *
 * @throws StudyError `cannot_write`; nothing is left beside the old file then.
 */
export async function writeFileWhole(path: string, data: string | Uint8Array): Promise<void> {
  const target = await fileBehind(path);
  const folder = dirname(target);
  const temporary = join(folder, `.${basename(target).slice(0, 100)}.${randomUUID()}.tmp`);
  try {
    await mkdir(folder, { recursive: true });
    await writeThrough(temporary, data, await permissionsOf(target));
    await rename(temporary, target);
  } catch (fault) {
    await rm(temporary, { force: true }).catch(() => undefined);
    throw writeRefusal(path, fault);
  }
  await syncFolder(folder);
}
