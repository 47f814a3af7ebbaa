import type { Points } from "./Points.js";

/**
 * Where toe and heels lie on the ground surface: the tip of the toe, and the ground end of the inner (medial) and of the outer
 * (lateral) heel buttress. The axis of the foot runs from the toe to the middle between the heels.
 */
export interface FootLandmarks {
  readonly toe: Points[number];
  readonly heelMedial: Points[number];
  readonly heelLateral: Points[number];
}
