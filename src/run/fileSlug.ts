/** A name as part of a file name: letters, digits and hyphens, so that no name leads elsewhere or is refused by a disk. @private */
export function fileSlug(name: string): string {
  const slug = name
    .normalize("NFC")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 80);
  return slug === "" ? "unnamed" : slug;
}
