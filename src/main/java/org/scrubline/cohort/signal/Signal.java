package org.scrubline.cohort.signal;

import java.util.List;

/**
 * Something worth a look. A prompt with its reason, never a statement about a person.
 *
 * @param about id of the trainee or supervisor
 * @param procedure code of the procedure it concerns; empty when it concerns all
 * @param steps codes of the steps it concerns; mostly none
 * @param figures what the sentence prints, in its order
 * @param forms ids of the signed sheets it rests on, oldest case first
 */
public record Signal(
        Kind kind, String about, String procedure, List<String> steps, List<Double> figures, List<String> forms) {

    /** What can be noticed; limits and rates of false alarms are in {@code docs/model.md}. */
    public enum Kind {
        /** The level has hardly risen over the last third and lies below what the standard asks. */
        PLATEAU,
        /** The level lies below where it was, and no break explains it. */
        REGRESSION,
        /** A long time without a case, with what the level did since. */
        BREAK,
        /** Steps that stay behind the trainee's other steps. */
        STEPS_BEHIND,
        /** Fewer cases a month than the others of the programme. */
        FEW_CASES,
        /** Most sheets about the trainee come late. */
        SCORED_LATE,
        /** Many sheets about the trainee were never signed. */
        UNSCORED,
        /** In no procedure is there enough for a proposal. */
        INSUFFICIENT,
        /** The evidence supports the highest standard. */
        SUPPORTED,
        SCORES_LOWER,
        SCORES_HIGHER,
        /** Nearly all levels lie on two neighbours of the scale. */
        NARROW_RANGE,
        /** Many sheets give every step the same level. */
        ONE_LEVEL,
        /** Most sheets are signed late. */
        SIGNS_LATE
    }

    public Signal {
        steps = List.copyOf(steps);
        figures = List.copyOf(figures);
        forms = List.copyOf(forms);
    }

    static Signal of(Kind kind, String about, List<Double> figures, List<SignedForm> forms) {
        return new Signal(kind, about, "", List.of(), figures, ids(forms));
    }

    static List<String> ids(List<SignedForm> forms) {
        return forms.stream().map(SignedForm::id).toList();
    }
}
