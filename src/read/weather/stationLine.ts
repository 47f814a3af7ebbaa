/** Where a station stands, from its line of ghcnd-stations.txt. */
export interface StationPlace {
  readonly station: string;
  readonly latitudeDeg: number;
  readonly longitudeDeg: number;
  /** Height above the sea, m; null when the list has -999.9. */
  readonly elevationM: number | null;
}

const NO_ELEVATION = -999.9;

/**
 * Cuts a line of ghcnd-stations.txt at its fixed columns: ID 1-11, LATITUDE 13-20, LONGITUDE 22-30, ELEVATION 32-37 (-999.9 is missing); what
 * follows (state, name, networks) is not used. Returns what is wrong as a clause when the line is not of that form.
 *
 * Source: NOAA, GHCN-Daily readme.txt, format of ghcnd-stations.txt.
 */
export function stationLine(line: string): StationPlace | string {
  const station = line.slice(0, 11).trimEnd();
  if (!/^[A-Za-z0-9_-]+$/.test(station)) return `characters 1 to 11 hold "${line.slice(0, 11)}", no station identifier`;
  const latitudeDeg = decimal(line.slice(12, 20));
  const longitudeDeg = decimal(line.slice(21, 30));
  const elevationM = decimal(line.slice(31, 37));
  if (latitudeDeg === null || Math.abs(latitudeDeg) > 90) {
    return `characters 13 to 20 hold "${line.slice(12, 20)}", no latitude from -90 to 90`;
  }
  if (longitudeDeg === null || Math.abs(longitudeDeg) > 180) {
    return `characters 22 to 30 hold "${line.slice(21, 30)}", no longitude from -180 to 180`;
  }
  if (elevationM === null) return `characters 32 to 37 hold "${line.slice(31, 37)}", no elevation`;
  return { station, latitudeDeg, longitudeDeg, elevationM: elevationM === NO_ELEVATION ? null : elevationM };
}

// Right-aligned in its columns, so that a shifted line is not taken for another number.
function decimal(field: string): number | null {
  return /^ *-?\d+\.\d+$/.test(field) ? Number(field) : null;
}
