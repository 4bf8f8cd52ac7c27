package org.scrubline.casework.web;

import java.math.BigDecimal;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The score sheet as its page shows it.
 *
 * @param person who writes on it
 * @param reopened which version of a signed sheet this is and why; null for the first
 */
record SheetPage(
        String sheet,
        String person,
        String action,
        int version,
        String title,
        List<Fact> facts,
        Role role,
        List<Phase> phases,
        Events events,
        Feedback strength,
        Feedback nextStep,
        Foot foot,
        @Nullable String reopened) {

    /** A fact in the line under the heading. */
    record Fact(@Nullable String value, @Nullable String text) {}

    /** A choice of radios or a button; {@code hint} may be null. */
    record Option(String value, String label, @Nullable String hint) {}

    /**
     * The trainee's part and the supervision given.
     *
     * @param said what is confirmed, in words; null until it is
     * @param logged what the log says, in words
     */
    record Role(
            @Nullable String said,
            String logged,
            List<Option> parts,
            List<String> part,
            List<Option> supervisions,
            List<String> supervision,
            @Nullable String error) {}

    /**
     * A phase with the steps in sight and those that belong to the case only after a conversion.
     *
     * @param rest one-tap answers for what is still blank, {@code value} being PHASE:STATE
     * @param pieces said when sponges in and out differ, else empty; null where none are counted out
     */
    record Phase(
            String code,
            String name,
            int done,
            int total,
            boolean open,
            List<Step> steps,
            List<Step> folded,
            List<Option> rest,
            @Nullable String pieces) {}

    /** A step; see the step-card component. */
    record Step(
            String code,
            String name,
            boolean critical,
            @Nullable String sees,
            List<Level> levels,
            @Nullable String answer,
            @Nullable String cause,
            List<Measure> measures,
            @Nullable String error,
            boolean locked) {}

    /** One of the five levels with its sentence. */
    record Level(int value, String sentence) {}

    /** A measure; {@code yesNo} is entered as 1 or 0 from a list, everything else with the stepper. */
    record Measure(
            String code,
            String label,
            @Nullable String unit,
            @Nullable String usual,
            @Nullable String value,
            BigDecimal min,
            BigDecimal max,
            BigDecimal by,
            boolean yesNo,
            @Nullable String error) {}

    /** Events recorded, what can be recorded, and what was typed of one that is not recorded yet. */
    record Events(
            List<Recorded> recorded,
            List<Option> kinds,
            List<Option> steps,
            List<Option> reasons,
            String code,
            String reason,
            String action,
            @Nullable String error) {}

    /** An event on the sheet in words. */
    record Recorded(String id, String text) {}

    /** A sentence typed or picked. */
    record Feedback(
            String field,
            String text,
            List<String> suggestions,
            @Nullable String error) {}

    /** The foot: how far, the running verdict, its reasons. */
    record Foot(int done, int total, String verdict, List<Reason> reasons) {}

    /** A reason of the verdict and the step it leads to. */
    record Reason(String text, String href) {}
}
