/** A horse's own history must span so many other days: with one, nobody could say which of the two is wrong. */
export const fewestDays = 2;
