package org.scrubline.scoring.curve;

/**
 * What an entitlement level asks of the next typical case: every critical step at one level or better, with a wanted
 * chance.
 *
 * @param code the programme's code of the entitlement level
 * @param level lowest level k that meets the standard on a step, 2 or more; at most the K of the scores it is used with
 * @param chance wanted chance that all critical steps meet it in one case, above 0 and below 1
 */
public record LevelStandard(String code, int level, double chance) {

    /**
     * Checks level and chance.
     *
     * @param code not checked
     * @param level 2 or more
     * @param chance strictly between 0 and 1
     * @throws IllegalArgumentException when level or chance is out of its range
     */
    public LevelStandard {
        if (level < 2 || !(chance > 0 && chance < 1)) {
            throw new IllegalArgumentException("standard " + code + " needs a level above 1 and a chance between 0 and"
                    + " 1, but has " + level + " and " + chance);
        }
    }
}
