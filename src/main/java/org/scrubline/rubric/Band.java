package org.scrubline.rubric;

/** Complexity band of a case, from its technical points: A 0, B 1 to 2, C 3 to 4, D 5 and more. */
public enum Band {
    A,
    B,
    C,
    D;

    /**
     * The band of this many technical points.
     *
     * @param points 0 or more
     * @throws IllegalArgumentException for a negative number
     */
    public static Band ofPoints(int points) {
        if (points < 0) {
            throw new IllegalArgumentException("Technical points cannot be negative: " + points);
        }
        if (points == 0) {
            return A;
        }
        return points <= 2 ? B : points <= 4 ? C : D;
    }
}
