package org.scrubline.outcome;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What was found when the eye was seen. What nobody wrote down is null, which is not the same as nothing found.
 *
 * @param vision against before the operation; a change counts from two lines on the chart
 * @param care what was done to the eye at this visit or since the one before
 * @param moreSurgery further operation for glaucoma since the one before
 * @param lightLost the eye no longer sees light
 */
public record Visit(
        LocalDate day,
        Pressure pressure,
        @Nullable Chamber chamber,
        @Nullable LeakTest leakTest,
        @Nullable Bleb bleb,
        @Nullable Boolean effusion,
        @Nullable Vision vision,
        Set<Care> care,
        boolean moreSurgery,
        boolean lightLost,
        SeenBy seenBy)
        implements OutcomeEntry.Content {

    public Visit {
        care = Set.copyOf(care);
    }

    /** Flat: the cornea touches the lens. */
    public enum Chamber {
        DEEP,
        SHALLOW,
        FLAT
    }

    public enum LeakTest {
        DRY,
        LEAKS,
        NOT_DONE
    }

    public enum Bleb {
        SPREAD,
        RAISED,
        WALLED_OFF,
        NONE
    }

    public enum Vision {
        SAME,
        WORSE,
        BETTER
    }

    /** What is done to the eye after an operation; all but the way back to theatre is ordinary care and no complication. */
    public enum Care {
        SUTURE_RELEASE,
        SUTURE_LYSIS,
        MASSAGE,
        FLUOROURACIL,
        NEEDLING,
        THEATRE
    }

    /** Who saw the eye. The one who operated should not be the only judge. */
    public enum SeenBy {
        OPERATOR,
        OTHER,
        ELSEWHERE
    }

    /** In the order of the list, since a set of them has none. */
    public Set<Care> careInOrder() {
        return care.isEmpty() ? new TreeSet<>() : EnumSet.copyOf(care);
    }
}
