package org.scrubline.scoring.curve;

/**
 * One observed step score. Steps not seen, not part of the operation or done by the supervisor as planned have no
 * score; a takeover is level 1 and the untouched rest of its phase has no score.
 *
 * @param assessment one supervisor's scoring of one case
 * @param trainee who operated
 * @param supervisor who scored
 * @param context the case
 * @param step step code
 * @param lowest lowest level the entry allows, 1..K
 * @param highest highest level the entry allows, lowest..K; equal to lowest for an ordinary score
 */
public record ObservedScore(
        String assessment,
        String trainee,
        String supervisor,
        CaseContext context,
        String step,
        int lowest,
        int highest) {

    /**
     * Checks the order of the levels; whether the scale has them is checked by {@link ScoreTableBuilder#add}.
     *
     * @param assessment not checked
     * @param trainee not checked
     * @param supervisor not checked
     * @param context not checked
     * @param step not checked
     * @param lowest 1 or more
     * @param highest {@code lowest} or more
     * @throws IllegalArgumentException when levels do not run upwards from 1
     */
    public ObservedScore {
        if (lowest < 1 || highest < lowest) {
            throw new IllegalArgumentException("assessment " + assessment + ", step " + step
                    + ": levels must run upwards from 1, but are " + lowest + ".." + highest);
        }
    }

    /**
     * An ordinary score at one level.
     *
     * @param assessment one supervisor's scoring of one case
     * @param trainee who operated
     * @param supervisor who scored
     * @param context the case
     * @param step step code
     * @param level 1..K
     * @throws IllegalArgumentException when the level is below 1
     */
    public ObservedScore(
            String assessment, String trainee, String supervisor, CaseContext context, String step, int level) {
        this(assessment, trainee, supervisor, context, step, level, level);
    }
}
